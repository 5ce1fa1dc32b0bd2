/** The published numbers of this build, as rows that can be searched. */
import type made from '../generated/validation.json';
import { help } from '../text/help';
import { localised } from '../text/say';

export type Proof = typeof made;

export interface ProofRow {
  subject: string;
  id: string;
  quantity: string;
  published: string;
  ours: string;
  deviation: string;
  tolerance: string;
  basis: string;
  source: string;
  note: string;
  pass: boolean;
}

const bases: Readonly<Record<string, 'published' | 'memory' | 'derived'>> = {
  published: 'published',
  'from memory': 'memory',
  derived: 'derived',
};

export function rowsOf({ subjects, sources, notes, rows: r }: Proof): ProofRow[] {
  const unit = (i: number): string => (r.unit[i] ? ` ${r.unit[i]}` : '');
  const told = (list: readonly string[], i: number): string => localised(list[i] ?? '');
  return r.id.map((id, i) => ({
    subject: subjects[r.subject[i] ?? -1] ?? '',
    id,
    quantity: r.quantity[i] ?? '',
    published: told(r.published, i) + unit(i),
    ours: told(r.ours, i) + unit(i),
    deviation: told(r.deviation, i),
    tolerance: told(r.tolerance, i),
    basis: help.accuracy.basis[bases[r.basis[i] ?? ''] ?? 'published'],
    source: sources[r.source[i] ?? -1] ?? '',
    note: notes[r.note[i] ?? -1] ?? '',
    pass: r.pass[i] ?? false,
  }));
}

export const subjectName = (subject: string): string =>
  (help.accuracy.subjects as Readonly<Record<string, string>>)[subject] ?? subject;

/** The rows of a subject (empty: of all) that hold every word. */
export function filtered(rows: readonly ProofRow[], subject: string, typed: string): ProofRow[] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter((row) => {
    if (subject && row.subject !== subject) return false;
    const held = `${row.id} ${row.quantity} ${row.source} ${row.basis} ${row.note}`.toLowerCase();
    return wanted.every((w) => held.includes(w));
  });
}

/** Rows by subject, in the order of the table. */
export function grouped(rows: readonly ProofRow[]): Map<string, ProofRow[]> {
  const groups = new Map<string, ProofRow[]>();
  for (const row of rows) {
    const group = groups.get(row.subject);
    if (group) group.push(row);
    else groups.set(row.subject, [row]);
  }
  return groups;
}
