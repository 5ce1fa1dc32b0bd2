import { describe, expect, test } from 'vitest';
import { beside, entriesOf, inputsOf } from '../../src/derive/form';
import type { Helper, Scale } from '../../src/generated/contract';
import tableText from '../../src/generated/units.json?raw';
import { UnitReader } from '../../src/state/units';
import { celsius } from '../fixtures/tables';

const units = new UnitReader(JSON.parse(tableText) as Scale[]);
const kilopascal = { dimension: 'pressure', symbol: 'kPa', factor: 1e-3, offset: 0, digits: 4 };
const input = (
  name: string,
  display: typeof celsius,
  low: number,
  high: number,
  usual: number | null,
): object => ({
  name,
  symbol: name,
  label: name,
  display,
  us_display: display,
  low,
  high,
  default: usual,
});
/** A helper in the core's shape; invented. */
const bulb = {
  kind: 'wet_bulb',
  for: [
    {
      path: 'tunnel.zones[].humidity.dew_point_K',
      from: ['tunnel.zones[].air_temperature_K', '', 'workshop.pressure_Pa'],
    },
  ],
  inputs: [
    input('temperature_K', celsius, 273.15, 523.15, null),
    input('wet_bulb_K', celsius, 273.15, 523.15, null),
    input('pressure_Pa', kilopascal, 60e3, 110e3, 101325),
  ],
} as unknown as Helper;

const path = 'tunnel.zones[1].humidity.dew_point_K';
const job: Record<string, unknown> = {
  'tunnel.zones[1].air_temperature_K': 363.15,
  'workshop.pressure_Pa': null,
};
const entries = (typed: Record<string, string> = {}): ReturnType<typeof entriesOf> =>
  entriesOf(bulb, path, new Map(Object.entries(typed)), (p) => job[p], units);

describe('a helper at its field', () => {
  test('looks beside the field for what the job knows', () => {
    expect(beside('tunnel.zones[].air_temperature_K', path)).toBe('tunnel.zones[1].air_temperature_K');
    expect(beside('workshop.pressure_Pa', path)).toBe('workshop.pressure_Pa');
  });

  test('starts with the number of the job, else with what is usual, else empty', () => {
    expect(entries().map((e) => [e.typed, e.fromJob, e.si])).toEqual([
      ['90', true, 363.15],
      ['', false, null],
      ['101.325', false, 101325],
    ]);
    expect(inputsOf(entries())).toBeNull();
  });

  test('reads units, and says what they mean', () => {
    const [air, wet, pressure] = entries({
      'wet_bulb/temperature_K': '212 F',
      'wet_bulb/wet_bulb_K': '40',
      'wet_bulb/pressure_Pa': '29 inHg',
    });
    expect(air?.meaning).toBe('100 °C');
    expect(wet?.meaning).toBe('');
    expect(pressure?.si).toBeCloseTo(98205.281, 3); // 29 times 3386.389, NIST SP 811
    expect(inputsOf(entries({ 'wet_bulb/wet_bulb_K': '40' }))).toEqual({
      temperature_K: 363.15,
      wet_bulb_K: 313.15,
      pressure_Pa: 101325,
    });
  });

  test('says what is wrong at the number', () => {
    const [, wet, pressure] = entries({ 'wet_bulb/wet_bulb_K': '5 mm', 'wet_bulb/pressure_Pa': '5' });
    expect(wet).toMatchObject({ si: null });
    expect(wet?.wrong).not.toBe('');
    expect(pressure?.wrong).not.toBe('');
    expect(entries({ 'wet_bulb/pressure_Pa': '110' })[2]).toMatchObject({ si: 110e3, wrong: '' }); // the limit itself
  });
});
