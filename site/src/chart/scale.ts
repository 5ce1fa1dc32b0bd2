/**
 * How the quantities of pictures are shown: the one table of units here, so that axis, read-out, table and file agree. Shown =
 * SI · factor + offset, as in the display entries of the job's fields.
 */
import type { Display } from '../generated/contract';
import { number } from '../text/quantity';

export type Quantity = 'temperature' | 'water' | 'humidity' | 'share' | 'length' | 'coat';

const scales: Readonly<Record<Quantity, Pick<Display, 'symbol' | 'factor' | 'offset'>>> = {
  temperature: { symbol: '°C', factor: 1, offset: -273.15 },
  water: { symbol: 'g/kg', factor: 1e3, offset: 0 },
  humidity: { symbol: 'g/kg', factor: 1e3, offset: 0 },
  share: { symbol: '%', factor: 100, offset: 0 },
  length: { symbol: 'm', factor: 1, offset: 0 },
  coat: { symbol: 'g/m²', factor: 1e3, offset: 0 },
};

export const scaleOf = (of: Quantity): Pick<Display, 'symbol' | 'factor' | 'offset'> => scales[of];
export const unitOf = (of: Quantity): string => scales[of].symbol;
/** An SI number in the unit that is shown. */
export const shownIn = (si: number, of: Quantity): number => si * scales[of].factor + scales[of].offset;

/** A name with its unit, as axes and the heads of tables have it. */
export const withUnit = (name: string, unit: string): string => (unit ? `${name} (${unit})` : name);

/** The unit of a difference: a scale with a zero of its own has another sign for it. */
const apart: Partial<Record<Quantity, string>> = { temperature: 'K' };
export const differenceOf = (of: Quantity): string => apart[of] ?? unitOf(of);

/** An SI number as it is read, with its unit. */
export const amount = (si: number, of: Quantity): string => `${number(shownIn(si, of))} ${unitOf(of)}`;
