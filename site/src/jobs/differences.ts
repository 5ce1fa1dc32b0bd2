/** The inputs in which two jobs differ, in the words of the field table and in the order of the form. */
import type { Block, Catalogue, Field, Job } from '../generated/contract';
import { shortValue } from '../form/digest';
import { sections, type SectionName } from '../form/layout';
import { isBag } from '../state/lay';
import { templateOf } from '../state/path';
import { shownText } from '../state/display';
import { jobs as words } from '../text/jobs';
import { text } from '../text';

export interface Difference {
  path: string;
  section: string;
  /** What it is called, with the entries of lists that it lies in. */
  label: string;
  left: string;
  right: string;
}

interface Unlike {
  path: string;
  left: unknown;
  right: unknown;
}

/** Every place where two documents differ: the smallest, or the whole block where only one has it. */
export function unlike(left: unknown, right: unknown, path = ''): Unlike[] {
  const names =
    isBag(left) && isBag(right) ? [...new Set([...Object.keys(left), ...Object.keys(right)])] : null;
  if (names) {
    const [a, b] = [left as Record<string, unknown>, right as Record<string, unknown>];
    return names.flatMap((name) => unlike(a[name], b[name], path === '' ? name : `${path}.${name}`));
  }
  if (Array.isArray(left) && Array.isArray(right)) {
    const length = Math.max(left.length, right.length);
    return Array.from({ length }).flatMap((_, i) => unlike(left[i], right[i], `${path}[${i}]`));
  }
  return Object.is(left ?? null, right ?? null) ? [] : [{ path, left, right }];
}

export function differencesOf(
  left: Job,
  right: Job,
  { fields, blocks }: Pick<Catalogue, 'fields' | 'blocks'>,
): Difference[] {
  const order = new Map([...fields, ...blocks].map((entry, i) => [entry.path, i]));
  const rank = (path: string): number => {
    const section = sections.indexOf(sectionOf(path) as SectionName);
    return (
      (section < 0 ? (path.startsWith('fits') ? sections.length : -1) : section) * 10_000 +
      (order.get(templateOf(path)) ?? 9_999)
    );
  };
  const found = unlike(
    { ...left, fits: fitsOf(left), version: 0 },
    { ...right, fits: fitsOf(right), version: 0 },
  );
  return found
    .map((one) => ({ one, at: rank(one.path) }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => word(one, fields, blocks));
}

/** Trials count by name and day; their tables are no inputs. */
const fitsOf = (job: Job): string =>
  job.fits.map((f) => [f.name, f.date].filter(Boolean).join(', ')).join('; ');

const sectionOf = (path: string): string => /^\w+/.exec(path)?.[0] ?? '';

function word({ path, left, right }: Unlike, fields: readonly Field[], blocks: readonly Block[]): Difference {
  const name = sectionOf(path);
  const title = (sections as readonly string[]).includes(name)
    ? text.form.sections[name as SectionName]
    : words.compare.general;
  const field = fields.find((f) => f.path === templateOf(path));
  const [a, b] = [left, right].map((value) => said(value, field));
  // Two values that differ further behind the point than is usually shown.
  const close = a === b && field && typeof left === 'number' && typeof right === 'number';
  const [long, other] = close ? [left, right].map((v) => shownText(v, field.display)) : [a, b];
  return { path, section: title, label: labelOf(path, fields, blocks), left: long ?? '', right: other ?? '' };
}

function said(value: unknown, field: Field | undefined): string {
  if (value === null || value === undefined) return words.compare.nothing;
  if (field) return shortValue(value, field) || words.compare.nothing;
  if (typeof value === 'object') return words.compare.there;
  return String(value) || words.compare.nothing;
}

/** The names from the section down: "Zone 2, air temperature". */
function labelOf(path: string, fields: readonly Field[], blocks: readonly Block[]): string {
  if (path === 'fits') return words.compare.trials;
  const parts: string[] = [];
  for (const match of path.matchAll(/[.[]|$/g)) {
    const upTo = path.slice(0, match.index);
    const entry = /\[(\d+)\]$/.exec(upTo);
    const known = blocks.find((b) => b.path === templateOf(upTo).replace(/\[\]$/, ''));
    if (entry && known) parts.push(text.form.item({ item: known.label, n: Number(entry[1]) + 1 }));
    else if (known && !known.list && upTo.includes('.')) parts.push(known.label);
    else if (upTo === path) {
      const field = fields.find((f) => f.path === templateOf(path));
      if (field) parts.push(field.label);
    }
  }
  const name = blocks.find((b) => b.path === path)?.label;
  const label = parts.length > 0 ? parts.join(', ') : (name ?? path);
  return label.charAt(0).toUpperCase() + label.slice(1);
}
