import type { Display } from '../generated/contract';
import { fieldText } from './number';

/** The unit change of the field table: shown = SI · factor + offset. */
export const toShown = (si: number, d: Display): number => si * d.factor + d.offset;
export const toSI = (shown: number, d: Display): number => (shown - d.offset) / d.factor;

/** An SI number as it stands in its field. */
export const shownText = (si: number, d: Display): string => fieldText(toShown(si, d));

/** A limit in words: few digits, because "between 0 and 250" is read and "between 0.000012 and 250" is not. */
export function limitText(si: number, d: Display): string {
  return fieldText(Number(toShown(si, d).toPrecision(5)));
}

/** A text with the unit behind it, where there is one. */
export const withUnit = (text: string, { symbol }: Pick<Display, 'symbol'>): string =>
  symbol ? `${text} ${symbol}` : text;

/** An amount to be read, not typed: four digits and the unit. */
export const amountText = (si: number, d: Display): string =>
  `${fieldText(Number(toShown(si, d).toPrecision(4))).replace('-', '\u2212')}${d.symbol ? `\u00a0${d.symbol}` : ''}`;

/** What is usual, in round numbers: a unit change must not make 1 mm to 0.03937 in. */
export function usualText(low: number, high: number, d: Display): string {
  const round = (si: number): string => {
    const shown = Number(toShown(si, d).toPrecision(9));
    return fieldText(Number.isInteger(shown) ? shown : Number(shown.toPrecision(3)));
  };
  return withUnit(`${round(low)} – ${round(high)}`, d);
}

/** A minus that is told from the dash of a range. */
const signed = (text: string): string => text.replace('-', '\u2212');

export const rangeText = (low: number, high: number, d: Display): string =>
  `${signed(limitText(low, d))} – ${signed(limitText(high, d))}${d.symbol ? `\u00a0${d.symbol}` : ''}`;
