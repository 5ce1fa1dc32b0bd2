/** Which cautions apply to a job: those of its records, those of its routes, and the one that always does. */
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job } from '../generated/contract';
import { getAt } from '../state/path';
import { detail } from '../text/detail';

export interface Caution {
  text: string;
  source: string;
}

const kinds: readonly RecordKind[] = ['adhesive', 'part', 'fibre'];

/** What must be so in a job for a caution of a record to count; the others always do. */
const applies: Readonly<Record<string, (job: Job) => boolean>> = {
  // About heat.
  co_solvent: heated,
  decomposition: heated,
  hydrogen_chloride: heated,
  damp_plastic: heated,
  // About the crosslinker, which may be left out of a two-part adhesive.
  isocyanate: crosslinks,
  aziridine: crosslinks,
  carbodiimide: crosslinks,
  formaldehyde: crosslinks,
};

function heated(job: Job): boolean {
  return job.static_oven !== null || job.tunnel !== null;
}

function crosslinks(job: Job): boolean {
  return job.film.adhesive.crosslinking !== null;
}

export function cautionsOf(job: Job, catalogue: Catalogue): Caution[] {
  const t = detail.cautions;
  const keys = new Set<string>();
  for (const kind of kinds) {
    const record = recordOf(kind, getAt(job, `${recordKinds[kind].path}.record`), catalogue);
    for (const key of record?.cautions ?? []) keys.add(key);
  }
  const { record, co_solvent } = job.film.adhesive;
  if (job.pile) keys.add('fibre_dust');
  // Nobody knows what an adhesive without a record holds; where it is heated, that is said.
  if (record === '' || co_solvent !== null) keys.add('co_solvent');
  const told = catalogue.cautions.filter((c) => keys.has(c.key) && (applies[c.key]?.(job) ?? true));
  return [
    ...(heated(job) ? [{ text: t.hot, source: '' }] : []),
    ...(record === '' && crosslinks(job) ? [{ text: t.unknown, source: '' }] : []),
    ...told,
    { text: t.always, source: '' },
  ];
}
