/**
 * Numbers as they are printed where the core gives no text of its own: table cells, pictures. The rules are
 * those of the core's report, so that the same figure never stands on the page in two roundings.
 */
import type { Display, Measures } from '../generated/contract';
import { digits as plain, localised, timeUnit, type TimeUnit } from './say';

const minus = '\u2212';
const absent = '–';

const ladder: readonly [seconds: number, name: TimeUnit, limit: number][] = [
  [1, 's', 120],
  [60, 'min', 120],
  [3600, 'h', 48],
  [86400, 'd', Infinity],
];

/** A time [s] as a workshop says it: seconds below 2 min, minutes below 2 h, hours below 48 h, else days. */
export function duration(seconds: number): string {
  if (!Number.isFinite(seconds)) return absent;
  const size = Math.abs(seconds);
  for (const [unit, name, limit] of ladder) {
    const v = significant(size / unit);
    if (v < limit) return `${sign(seconds, v)}${plain(v)} ${timeUnit(name)}`;
  }
  return absent;
}

let measures: Measures;

/** From now on results are printed in these units: the core's catalogue holds them. */
export function measureIn(units: Measures): void {
  measures = units;
}

/** The unit of a measure. */
export const unitOf = (name: keyof Measures): string => measures[name].symbol;
/** A number in SI as it is shown, in the unit of its measure. */
export const shownIn = (name: keyof Measures, si: number): number => {
  const { factor, offset }: Display = measures[name];
  return si * factor + offset;
};
/** A number as it is shown, in SI. */
export const siOf = (name: keyof Measures, shown: number): number => {
  const { factor, offset } = measures[name];
  return (shown - offset) / factor;
};
/** A number per unit of a measure in SI, per the unit that is shown. */
export const perUnit = (name: keyof Measures, perSI: number): number => perSI / measures[name].factor;
/** A number in SI with three significant digits and the unit of its measure. */
export const amount = (name: keyof Measures, si: number): string => three(shownIn(name, si), unitOf(name));

/** A temperature [K] with one decimal. */
export const temperature = (kelvin: number): string =>
  fixed(shownIn('temperature', kelvin), 1, unitOf('temperature'));
/** A water content of the film [kg of water per kg of solids]. */
export const water = (ratio: number): string => amount('film_water', ratio);
/** A share in per cent with one decimal. */
export const percent = (fraction: number): string => fixed(fraction * 100, 1, '%');
/** A bare number with three significant digits. */
export const number = (v: number, unit = ''): string => three(v, unit);

/** The relative error of a balance with one digit: 3e-13. */
export const relative = (v: number): string =>
  Number.isFinite(v) ? localised(v.toExponential(0).replace('e+', 'e')) : absent;

function three(v: number, unit: string): string {
  if (!Number.isFinite(v)) return absent;
  const r = Number(Math.abs(v).toPrecision(3));
  const body = r !== 0 && (r < 1e-4 || r >= 1e7) ? scientific(r) : plain(r);
  return `${sign(v, r)}${body}${unit ? ` ${unit}` : ''}`;
}

function fixed(v: number, decimals: number, unit: string): string {
  if (!Number.isFinite(v)) return absent;
  const body = Math.abs(v).toFixed(decimals);
  return `${sign(v, Number(body))}${localised(body)} ${unit}`;
}

const significant = (v: number): number => (v < 1 ? Number(v.toFixed(2)) : Number(v.toPrecision(3)));
const sign = (v: number, printed: number): string => (v < 0 && printed !== 0 ? minus : '');

const raised: Record<string, string> = Object.fromEntries(
  [...'0123456789-'].map((c, i) => [c, '⁰¹²³⁴⁵⁶⁷⁸⁹⁻'[i] ?? c]),
);
function scientific(v: number): string {
  const [mantissa, exponent] = v.toExponential(2).split('e');
  const power = [...String(Number(exponent))].map((c) => raised[c] ?? c).join('');
  return `${plain(Number(mantissa))} · 10${power}`;
}
