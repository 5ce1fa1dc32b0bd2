import { describe, expect, test } from 'vitest';
import { fieldText, parseNumber } from '../../src/state/number';
import { count } from '../../src/text/say';

const speakMarks = (mark: string): void => count('en', mark, { s: 's', min: 'min', h: 'h', d: 'd' });

const value = (text: string, unit = ''): number | string => {
  const parsed = parseNumber(text, unit);
  return parsed.kind === 'number' ? parsed.value : parsed.kind;
};

describe('numbers as people type them', () => {
  test.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['0,15', 0.15],
    [' 120 ', 120],
    ['1 200', 1200],
    ['12\u202f000,5', 12000.5],
    ['−5', -5],
    ['+3', 3],
    ['.5', 0.5],
    ['5e-12', 5e-12],
    ['1,25E8', 1.25e8],
  ])('%s', (text, number) => expect(value(text)).toBe(number));

  test.each(['abc', '1,2,3', '1.200,5', '1 2', '12 34', '--5', 'Infinity', '1e999', '0x10', '5 mm'])(
    '%s is none',
    (text) => expect(value(text)).toBe('other'),
  );

  test('a mark that may group thousands is left alone, in either language', () => {
    expect([value('1,200'), value('1.200'), value('0,150')]).toEqual(['other', 1.2, 0.15]);
    speakMarks(',');
    expect([value('1,200'), value('1.200'), value('0.150')]).toEqual([1.2, 'other', 0.15]);
    speakMarks('.');
  });

  test('nothing is nothing', () => expect(value('   ')).toBe('empty'));
  test("the field's own unit is no mistake", () => {
    expect(value('150 g/m²', 'g/m²')).toBe(150);
    expect(value('80°c', '°C')).toBe(80);
    expect(value('g/m²', 'g/m²')).toBe('other');
  });
});

describe('the text in a field', () => {
  test('hides the noise of a unit change', () => expect(fieldText(393.15 - 273.15)).toBe('120'));
  test('keeps what was typed', () => expect(fieldText(0.123456789)).toBe('0.123456789'));
  test('writes the very small and very large with an exponent', () => {
    expect(fieldText(5e-12)).toBe('5e-12');
    expect(fieldText(1.2483e9)).toBe('1.2483e9');
  });

  // Whatever the page writes it must be able to read, or a press on a button would spoil a job.
  test('can be read back, over thirty decades', () => {
    for (let e = -15; e <= 15; e++) {
      for (const m of [1, 1.5, 3.14159265, 9.99999999, -2.5]) {
        const x = m * 10 ** e;
        expect(Math.abs((value(fieldText(x)) as number) / x - 1)).toBeLessThan(1e-8); // nine digits
      }
    }
  });
});
