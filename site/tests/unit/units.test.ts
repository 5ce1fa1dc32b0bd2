import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Scale } from '../../src/generated/contract';
import { UnitReader } from '../../src/state/units';

const read = <T>(path: string): T => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as T;

interface Line {
  text: string;
  dimension: string;
  unit: string;
  decimal: string;
  si?: number;
  refused?: string;
}

const reader = new UnitReader(read<Scale[]>('../../src/generated/units.json'));
const lines = read<Line[]>('../../../testdata/units/readings.json');

describe('the page reads what the core reads', () => {
  test('from as many lines as the core', () => expect(lines.length).toBeGreaterThanOrEqual(80));

  test.each(lines)('$text in $unit', ({ text, dimension, unit, decimal, si, refused }) => {
    const got = reader.read(text, { dimension, symbol: unit }, decimal);
    if (si === undefined) {
      expect(got.kind).toBe(refused === 'missing' ? 'empty' : refused);
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
  expect(reader.read('1,5', { dimension: '', symbol: '×' })).toEqual({ kind: 'number', si: 1.5, plain: true });
  expect(reader.read('5 mm', { dimension: '', symbol: '×' }).kind).toBe('choice');
});
