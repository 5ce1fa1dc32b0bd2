/** The records of the catalogue as the form uses them: which block of the job each kind fills, and with what. */
import type { Catalogue } from '../generated/contract';
import type { JobDocument } from '../state/job.svelte';

export type RecordKind = 'adhesive' | 'part' | 'fibre';

export interface CatalogueRecord {
  id: string;
  label: string;
  note: string;
  source: string;
  cautions: readonly string[];
  /** The numbers that belong to the material; the rest of the block is the shop's own and stays. */
  numbers: Readonly<Record<string, unknown>>;
}

interface Kind {
  /** The block of the job that a record fills. */
  path: string;
  records(catalogue: Catalogue): CatalogueRecord[];
}

const entries = (block: object): [string, unknown][] => Object.entries(block);
const only = (block: object, names: readonly string[]): Record<string, unknown> =>
  Object.fromEntries(entries(block).filter(([name]) => names.includes(name)));

export const recordKinds: Readonly<Record<RecordKind, Kind>> = {
  adhesive: {
    path: 'film.adhesive',
    records: (c) => c.adhesives.map((r) => ({ ...r, numbers: { ...r.adhesive } })),
  },
  part: {
    path: 'part',
    records: (c) => c.parts.map((r) => ({ ...r, numbers: only(r.part, r.sets) })),
  },
  fibre: {
    path: 'pile',
    records: (c) => c.fibres.map((r) => ({ ...r, numbers: only(r.pile, r.sets) })),
  },
};

/** The record that a block says its numbers came from. */
export function recordOf(kind: RecordKind, id: unknown, catalogue: Catalogue): CatalogueRecord | undefined {
  return recordKinds[kind].records(catalogue).find((r) => r.id === id);
}

/** Puts a record's numbers into the job. */
export function applyRecord(job: JobDocument, kind: RecordKind, record: CatalogueRecord): void {
  const { path } = recordKinds[kind];
  const before = job.at(path) as Record<string, unknown>;
  job.put(path, { ...before, ...record.numbers, record: record.id });
}

/** Whether a block still holds the record's numbers. */
export function sameNumbers(block: unknown, record: CatalogueRecord): boolean {
  const held = block as Record<string, unknown>;
  return entries(record.numbers).every(([name, value]) => name === 'record' || same(held[name], value));
}

/** What is said about the numbers, in the language in which the record was chosen: no number. */
const remarks: readonly string[] = ['reason'];

/** Whether two JSON values have the same numbers, in whatever order their members stand. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [entries(a), entries(b)];
  const other = new Map(right);
  return (
    left.length === right.length &&
    left.every(([name, value]) => remarks.includes(name) || same(value, other.get(name)))
  );
}
