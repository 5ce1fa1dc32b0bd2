/**
 * How the quantities of pictures are shown: axis, read-out, table and file of a picture take unit and factor from here, and this takes
 * them from the measures of the core's catalogue, which follow the units that were chosen.
 */
import type { Measures } from '../generated/contract';
import { number, shownIn as shownMeasure, unitOf as unitOfMeasure } from '../text/quantity';

export type Quantity = 'temperature' | 'water' | 'humidity' | 'share' | 'length' | 'coat' | 'area';

/** A share is no measure: per cent are per cent everywhere. */
const measures: Readonly<Record<Exclude<Quantity, 'share'>, keyof Measures>> = {
  temperature: 'temperature',
  water: 'film_water',
  humidity: 'air_humidity',
  length: 'length',
  coat: 'coat_weight',
  area: 'area',
};

export const unitOf = (of: Quantity): string => (of === 'share' ? '%' : unitOfMeasure(measures[of]));

/** An SI number in the unit that is shown. */
export const shownIn = (si: number, of: Quantity): number =>
  of === 'share' ? si * 100 : shownMeasure(measures[of], si);

/** The unit of a difference: a scale with a zero of its own has another sign for it. */
export const differenceOf = (of: Quantity): string =>
  of === 'temperature' ? unitOfMeasure('temperature_step') : unitOf(of);

/** A difference in SI as it is shown. */
export const shownDifference = (si: number, of: Quantity): number => shownIn(si, of) - shownIn(0, of);

/** An SI number as it is read, with its unit. */
export const amount = (si: number, of: Quantity): string => `${number(shownIn(si, of))} ${unitOf(of)}`;

/** A name with its unit, as axes and the heads of tables have it. */
export const withUnit = (name: string, unit: string): string => (unit ? `${name} (${unit})` : name);
