/** Texts in fields that are no values yet. */

/**
 * Why: nothing stands there, it is not a number, not a whole one, the file held something else in its place, its unit does not
 * fit, or it can be read in two ways.
 */
export const slipKinds = ['missing', 'number', 'whole', 'foreign', 'unit', 'twice'] as const;
export type Slip = (typeof slipKinds)[number];

export interface Slipped {
  path: string;
  text: string;
  slip: Slip;
}
