import { describe, expect, test } from 'vitest';
import type { ApiFault } from '../../src/generated/contract';
import type { Slip } from '../../src/state/slips';
import { complainOfFault, complaints, indexFields, placeOf } from '../../src/state/faults';
import { limitText, rangeText, shownText, toShown, toSI } from '../../src/state/display';
import { blocks, celsius, field, fields, grams } from '../fixtures/tables';

const index = indexFields(fields);
const fault = (more: Partial<ApiFault>): ApiFault => ({
  code: 'range',
  path: '',
  got: '1',
  low: 0,
  high: 1,
  unit: '',
  advice: 'Do this.',
  text: 'path: 1 is wrong. Do this.',
  ...more,
});

describe('the unit of display', () => {
  test('there and back', () => {
    expect(toShown(0.15, grams)).toBeCloseTo(150, 10);
    expect(toSI(150, grams)).toBe(0.15);
    expect(toSI(120, celsius)).toBe(393.15);
    expect(shownText(393.15, celsius)).toBe('120');
    expect(limitText(273.15, celsius)).toBe('0');
    expect(rangeText(0.02, 1, grams)).toBe('20 – 1000\u00a0g/m²');
  });
});

describe('complaints', () => {
  test('a range is told in the unit of the field', () => {
    const told = complainOfFault(
      fault({ path: 'tunnel.zones[1].air_temperature_K', got: '800', low: 273.15, high: 523.15, unit: 'K' }),
      index,
      blocks,
    );
    expect(told.sentence).toBe('Air temperature must be between 0 and 250 °C.');
    expect(told.place).toBe('Tunnel oven, Zone 2');
  });

  test('a whole number is asked for where one is needed', () => {
    const told = complainOfFault(fault({ path: 'numerics.film_cells', low: 8, high: 200 }), index, blocks);
    expect(told.sentence).toBe('Cells must be a whole number from 8 to 200.');
  });

  test('an unknown choice is answered with the choices as the form shows them', () => {
    const kind = field('workshop.transfer.kind', {
      kind: 'choice',
      label: 'Method',
      choices: [
        { value: 'natural', label: 'still air' },
        { value: 'given', label: 'a measured coefficient' },
      ],
    });
    const told = complainOfFault(
      fault({ code: 'choice', path: kind.path, got: '"magic"' }),
      indexFields([kind]),
      blocks,
    );
    expect(told.sentence).toBe('Method must be one of: still air, a measured coefficient.');
  });

  test('anything else is told in the words of the core, without its path', () => {
    const path = 'tunnel.zones[0].humidity';
    const told = complainOfFault(fault({ code: 'conflict', path, got: 'two are given' }), index, blocks);
    expect(told.sentence).toBe('Two are given. Do this.');
    expect(complainOfFault(fault({ code: 'missing', path, got: '' }), index, blocks).sentence).toBe(
      'Do this.',
    );
  });

  test('a fault of a field that the table does not know is still told', () => {
    expect(complainOfFault(fault({ path: 'new.field', advice: '' }), index, blocks).sentence).toContain(
      'is wrong',
    );
  });

  test('a slip stands before a fault of the same field', () => {
    const slips: [string, Slip][] = [['film.wet_coat_kg_per_m2', 'number']];
    const all = complaints(
      slips,
      [fault({ path: 'film.wet_coat_kg_per_m2' }), fault({ path: 'x' })],
      index,
      blocks,
    );
    expect(all).toHaveLength(2);
    expect(all[0]?.sentence).toBe('Wet coat must be a number in g/m², such as 1.5 or 1,5.');
  });

  test('a place is named by the blocks around it', () => {
    expect(placeOf('film.adhesive.crosslinking.schedule.pairs[0].time_s', blocks)).toBe(
      'Film, Adhesive, Crosslinking, Cure schedule, Pair 1',
    );
    expect(placeOf('', blocks)).toBe('');
  });
});
