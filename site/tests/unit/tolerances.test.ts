import { expect, test } from 'vitest';
import type { Variable } from '../../src/generated/contract';
import { newRow, rowOf, toleranceOf, tolerancesOf, unitOf } from '../../src/plan/tolerances';

const display = (symbol: string, factor = 1, offset = 0) => ({
  dimension: '',
  symbol,
  factor,
  offset,
  digits: 3,
});
const variable = (id: string, over: Partial<Variable>): Variable => ({
  ...{ id, label: id, help: '', unit: '', display: display(''), us_display: display(''), low: 0, high: 1 },
  ...{ usual_low: 0, usual_high: 1, present: 0.5, toward: 'highest', log: false, step: 0.1, given: false },
  ...over,
});
const coat = variable('coat', { unit: 'kg/m²', display: display('g/m²', 1000), log: true });
const air = variable('air', { unit: 'K', display: display('°C', 1, -273.15), step: 10 });

test('widths are shown per cent or in the unit of a difference, and come back as they were', () => {
  const share = { shape: 'normal', relative: true, width: 0.05 } as const;
  const kelvins = { shape: 'uniform', relative: false, width: 2 } as const;
  const grams = { shape: 'normal', relative: false, width: 0.004 } as const;
  for (const [v, t, typed, unit] of [
    [coat, share, '5', '%'],
    [air, kelvins, '2', 'K'],
    [coat, grams, '4', 'g/m²'],
  ] as const) {
    const row = rowOf(v, t);
    expect([row.typed, unitOf(row)]).toEqual([typed, unit]);
    expect(toleranceOf(row)).toEqual({ variable: v.id, ...t });
  }
});

test('a decimal comma and the unit behind are understood, nothing and nonsense are not', () => {
  const row = newRow(air);
  expect(toleranceOf({ ...row, typed: '1,5 K' })?.width).toBe(1.5);
  for (const typed of ['', '0', '-1', 'much']) expect(toleranceOf({ ...row, typed })).toBeNull();
  expect(tolerancesOf([])).toBeNull();
  expect(tolerancesOf([row, { ...row, typed: '' }])).toBeNull();
  expect(tolerancesOf([row])).toHaveLength(1);
});
