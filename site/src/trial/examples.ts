/** The invented trials, one per kind, as the core's tests write them, and what goes with them. */
import cure from '../../../testdata/invented-trials/cure.csv?raw';
import recorder from '../../../testdata/invented-trials/recorder.csv?raw';
import sorption from '../../../testdata/invented-trials/sorption.csv?raw';
import weight from '../../../testdata/invented-trials/weight.csv?raw';
import type { TrialKind } from '../generated/contract';

interface Example {
  table: string;
  /** Texts for fields of the question. */
  typed: Record<string, string>;
}

export const examples: Record<TrialKind, Example> = {
  weight: { table: weight, typed: { area_m2: '200' } },
  recorder: { table: recorder, typed: {} },
  cure: { table: cure, typed: {} },
  sorption: { table: sorption, typed: {} },
};
