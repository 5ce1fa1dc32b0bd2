/** Texts in fields that are no values yet. */
import type { Job } from '../generated/contract';

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

/** A job as it stands in the form. */
export interface Memo {
  job: Job;
  slips: Slipped[];
}
