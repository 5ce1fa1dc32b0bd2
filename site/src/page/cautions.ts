/** Which cautions apply to a job: those of its records, those of its routes, and the one that always does. */
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job } from '../generated/contract';
import { getAt } from '../state/path';
import { text } from '../text';

export interface Caution {
  text: string;
  source: string;
}

const kinds: readonly RecordKind[] = ['adhesive', 'part', 'fibre'];
/** Cautions about heat concern jobs with an oven. */
const ofOvens: ReadonlySet<string> = new Set([
  'co_solvent',
  'overheating',
  'hydrogen_chloride',
  'damp_plastic',
]);

export function cautionsOf(job: Job, catalogue: Catalogue): Caution[] {
  const oven = job.static_oven !== null || job.tunnel !== null;
  const keys = new Set<string>();
  for (const kind of kinds) {
    const record = recordOf(kind, getAt(job, `${recordKinds[kind].path}.record`), catalogue);
    for (const key of record?.cautions ?? []) keys.add(key);
  }
  if (job.pile) keys.add('fibre_dust');
  // Nobody knows what an adhesive without a record holds; where it is heated, that is said.
  if (job.film.adhesive.record === '') keys.add('co_solvent');
  const told = catalogue.cautions.filter((c) => keys.has(c.key) && (oven || !ofOvens.has(c.key)));
  return [
    ...(oven ? [{ text: text.cautions.hot, source: '' }] : []),
    ...told,
    { text: text.cautions.always, source: '' },
  ];
}
