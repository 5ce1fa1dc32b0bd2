/** Texts in fields that are no values yet. */

/** Why: nothing stands there, it is not a number, not a whole one, or the file held something else in its place. */
export const slipKinds = ['missing', 'number', 'whole', 'foreign'] as const;
export type Slip = (typeof slipKinds)[number];

export interface Slipped {
  path: string;
  text: string;
  slip: Slip;
}
