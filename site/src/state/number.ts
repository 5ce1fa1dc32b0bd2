import { decimalMark, marked } from '../text/say';

/**
 * Numbers as people type them in a field's own unit; units.ts reads all others. Decimal point or comma, spaces between
 * thousands, a typographic minus, an exponent, and the field's own unit behind the number are all understood; anything else
 * is said to be no number, never guessed at.
 */
export type Parsed = { kind: 'number'; value: number } | { kind: 'empty' } | { kind: 'other' };

const plain = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

export function parseNumber(text: string, unit = ''): Parsed {
  let t = text.replace(/[\u2212\u2013]/g, '-').trim();
  if (t === '') return { kind: 'empty' };
  if (unit !== '' && t.toLowerCase().endsWith(unit.toLowerCase())) t = t.slice(0, -unit.length);
  // Spaces of any kind may group thousands, but only between digits: "1 200", not "1 e 3".
  t = t.trim().replace(/(?<=\d)[\s\u00a0\u2009\u202f'](?=\d{3}(?!\d))/g, '');
  // A lone mark that is not the language's own may group thousands as well: "1,200" in English, "1.200" in German.
  const lone = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/.exec(t);
  if (lone && lone[1] !== decimalMark()) return { kind: 'other' };
  // One comma alone is a decimal mark. With a point beside it, or twice, it is left to the reader of units.
  const commas = t.split(',').length - 1;
  if (commas === 1 && !t.includes('.')) t = t.replace(',', '.');
  else if (commas > 0) return { kind: 'other' };
  if (!plain.test(t)) return { kind: 'other' };
  const value = Number(t);
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'other' };
}

/**
 * The text that stands in a field for a number: nine significant digits, which hides the noise of a unit change
 * (393.15 K is 120 °C, not 120.00000000000001) and loses nothing that anyone typed.
 */
export function fieldText(value: number): string {
  if (!Number.isFinite(value)) return '';
  const rounded = Number(value.toPrecision(9));
  const size = Math.abs(rounded);
  const scientific = size !== 0 && (size < 1e-4 || size >= 1e9);
  return marked(scientific ? rounded.toExponential().replace('e+', 'e') : String(rounded));
}
