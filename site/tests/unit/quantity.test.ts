import { expect, test } from 'vitest';
import { duration, number, percent, relative, temperature, water } from '../../src/text/quantity';

// The examples in the doc comments of cure/report/digits.go: both sides must print one number alike.
test('prints as the core prints', () => {
  expect([78, 324, 69120, 889920].map(duration)).toEqual(['78 s', '5.4 min', '19.2 h', '10.3 d']);
  expect(duration(119.96)).toBe('2 min');
  expect(duration(-1800)).toBe('−30 min');
  expect(duration(-0.001)).toBe('0 s');
  expect(duration(NaN)).toBe('–');
  expect(temperature(293.15)).toBe('20.0 °C');
  expect(water(0.0234)).toBe('23.4 g/kg');
  expect(percent(0.95)).toBe('95.0 %');
  expect(number(12.5)).toBe('12.5');
  expect(relative(3e-13)).toBe('3e−13');
});

test('writes the very small as a power of ten', () =>
  expect(number(2.3e-5, 'kg/(m² s)')).toBe('2.3 · 10⁻⁵ kg/(m² s)'));
