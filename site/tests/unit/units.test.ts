import { describe, expect, test } from 'vitest';
import linesText from '../../../testdata/units/readings.json?raw';
import type { Job, Scale, Variable } from '../../src/generated/contract';
import tableText from '../../src/generated/units.json?raw';
import { meaningOf } from '../../src/form/meaning';
import { indexFields } from '../../src/state/faults';
import { JobDocument } from '../../src/state/job.svelte';
import { readShown, UnitReader } from '../../src/state/units';
import { toleranceOf } from '../../src/plan/tolerances';
import { axisOf } from '../../src/plan/windows';
import { coat } from '../fixtures/tables';

interface Line {
  text: string;
  dimension: string;
  unit: string;
  decimal: string;
  si?: number;
  refused?: string;
}

const reader = new UnitReader(JSON.parse(tableText) as Scale[]);
const lines = JSON.parse(linesText) as Line[];

describe('the page reads what the core reads', () => {
  test('from as many lines as the core', () => expect(lines.length).toBeGreaterThanOrEqual(80));

  test.each(lines)('$text in $unit', ({ text, dimension, unit, decimal, si, refused }) => {
    const got = reader.read(text, { dimension, symbol: unit }, decimal);
    if (si === undefined) {
      // The core tells two readings and another dimension by their sentences, the page by their kinds.
      const kind = { empty: 'missing', twice: 'conflict' }[got.kind as string] ?? got.kind;
      expect(kind).toBe(refused);
    } else {
      expect(got.kind).toBe('number');
      // A few roundings of double precision, as in the core's test.
      if (got.kind === 'number') expect(Math.abs(got.si - si)).toBeLessThanOrEqual(4e-15 * Math.abs(si));
    }
  });
});

describe('a number that needs a note', () => {
  const plain = (text: string): boolean | null => {
    const got = reader.read(text, { dimension: 'length', symbol: 'µm' });
    return got.kind === 'number' ? got.plain : null;
  };
  test('is one with a unit or a fraction', () => {
    expect(plain('4 mil')).toBe(false);
    expect(plain('1/16')).toBe(false);
    expect(plain('80 µm')).toBe(false);
  });
  test('is none in the unit of the field', () => expect(plain(' 80,5 ')).toBe(true));
});

test('the units of a field are offered by their symbols', () => {
  expect(reader.symbols('length')).toContain('mil');
  expect(reader.symbols('number')).toEqual([]);
  expect(reader.symbols('share')).not.toContain('1');
});

test('what is shown in a unit of no dimension is a plain number', () => {
  expect(reader.read('1,5', { dimension: '', symbol: '×' })).toEqual({
    kind: 'number',
    si: 1.5,
    plain: true,
  });
  expect(reader.read('5 mm', { dimension: '', symbol: '×' }).kind).toBe('choice');
});

describe('a field', () => {
  const job = (): JobDocument =>
    new JobDocument({ version: 1, film: { wet_coat_kg_per_m2: 0.15 } } as unknown as Job);

  test('keeps what is typed, says what it means, and takes its own unit afterwards', () => {
    const d = job();
    d.understand(reader, indexFields([coat]));
    d.type(coat.path, '4.4 oz/yd2', coat);
    expect(d.at(coat.path)).toBeCloseTo(0.1491853, 7); // NIST SP 811: 3.390575e-2 kg/m²
    expect(d.text(coat.path, coat)).toBe('4.4 oz/yd2');
    expect(meaningOf(d, coat.path, coat)).toBe('149.185289\u00a0g/m²');
    d.settle(coat.path);
    expect(d.text(coat.path, coat)).toBe('149.185289');
    expect(meaningOf(d, coat.path, coat)).toBe('');
  });

  test('without the table takes a unit for a slip, and reads it again with it', () => {
    const d = job();
    d.type(coat.path, '0.2 kg/m2', coat);
    expect(d.slips.get(coat.path)).toBe('number');
    d.understand(reader, indexFields([coat]));
    expect(d.slips.size).toBe(0);
    expect(d.at(coat.path)).toBe(0.2);
  });

  test.each([
    ['4 mil', 'unit'],
    ['4 furlongs', 'unit'],
    ['1,200', 'twice'],
    ['two', 'number'],
  ])('%s is refused as %s, and the value stays', (text, slip) => {
    const d = job();
    d.understand(reader, indexFields([coat]));
    d.type(coat.path, text, coat);
    expect(d.slips.get(coat.path)).toBe(slip);
    expect(d.at(coat.path)).toBe(0.15);
    expect(meaningOf(d, coat.path, coat)).toBe('');
  });
});

describe('questions of plans and trials', () => {
  const display = { dimension: 'temperature', symbol: '°C', factor: 1, offset: -273.15, digits: 4 };
  const air = { id: 'air', unit: 'K', display, low: 250, high: 600 } as unknown as Variable;

  test('are read with any unit where the table is at hand, else in their own', () => {
    const boiling = readShown('212 F', display, reader);
    expect(boiling.kind === 'number' ? boiling.si : NaN).toBeCloseTo(373.15, 9);
    expect(readShown('212 F', display, null)).toEqual({ kind: 'other' });
    expect(readShown('100', display, null)).toEqual({ kind: 'number', si: 373.15 });
    expect(readShown(' ', display, reader)).toEqual({ kind: 'empty' });
    expect(axisOf({ variable: 'air', low: '104 F', high: '80' }, air, reader)?.low).toBeCloseTo(313.15, 9);
    expect(axisOf({ variable: 'air', low: '104 F', high: '80' }, air)).toBeNull();
  });

  test('a width of a temperature is a difference', () => {
    const row = { variable: air, shape: 'normal' as const, relative: false, typed: '9 °F' };
    expect(toleranceOf(row, reader)?.width).toBeCloseTo(5, 12);
    expect(toleranceOf({ ...row, typed: '3' }, reader)?.width).toBe(3);
    expect(toleranceOf({ ...row, typed: '5 %', relative: true }, reader)?.width).toBe(0.05);
    expect(toleranceOf({ ...row, typed: '3 mm' }, reader)).toBeNull();
  });
});
