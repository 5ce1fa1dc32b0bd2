/** The records of the catalogue as the form uses them: which block of the job each kind fills. */
import type { Catalogue } from '../generated/contract';
import type { JobDocument } from '../state/job.svelte';

export type RecordKind = 'adhesive' | 'part' | 'fibre';

export interface CatalogueRecord {
  id: string;
  label: string;
  note: string;
  source: string;
  cautions: readonly string[];
  block: Record<string, unknown>;
}

interface Kind {
  /** The block that the record fills. */
  path: string;
  /** Fields of that block that say how the shop uses the material; a record does not touch them. */
  ours: readonly string[];
  records(catalogue: Catalogue): CatalogueRecord[];
  apply(job: JobDocument, record: CatalogueRecord): void;
}

const asBlock = (value: object): Record<string, unknown> => value as Record<string, unknown>;

export const recordKinds: Readonly<Record<RecordKind, Kind>> = {
  adhesive: {
    path: 'film.adhesive',
    ours: [],
    records: (c) => c.adhesives.map((r) => ({ ...r, block: asBlock(r.adhesive) })),
    apply: (job, record) => fill(job, 'adhesive', record),
  },
  part: {
    path: 'part',
    ours: ['thickness_m', 'back', 'orientation', 'length_m', 'start_temperature_K', 'carrier'],
    records: (c) => c.parts.map((r) => ({ ...r, block: asBlock(r.part) })),
    apply: (job, record) => fill(job, 'part', record),
  },
  fibre: {
    path: 'pile',
    ours: ['applied_after_s'],
    records: (c) => c.fibres.map((r) => ({ ...r, block: asBlock(r.pile) })),
    apply: (job, record) => fill(job, 'fibre', record),
  },
};

function fill(job: JobDocument, kind: RecordKind, record: CatalogueRecord): void {
  const { path, ours } = recordKinds[kind];
  const before = job.at(path) as Record<string, unknown>;
  const kept = Object.fromEntries(ours.map((name) => [name, before[name]]));
  job.put(path, { ...before, ...record.block, ...kept, record: record.id });
}

/** Whether a block still holds the record's numbers. */
export function sameNumbers(block: unknown, record: Record<string, unknown>, kind: RecordKind): boolean {
  const skip = new Set(['record', ...recordKinds[kind].ours]);
  const plain = (value: unknown): string =>
    JSON.stringify(value, (key, v: unknown) => (skip.has(key) ? undefined : v));
  const known = Object.fromEntries(Object.keys(record).map((k) => [k, (block as Record<string, unknown>)[k]]));
  return plain(known) === plain(record);
}
