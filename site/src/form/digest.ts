/** What a closed section says of itself. */
import type { Field } from '../generated/contract';
import { toShown } from '../state/display';
import { fieldText } from '../state/number';
import { atIndex, getAt, templateOf } from '../state/path';
import { text } from '../text';
import { displayOf } from './prices';
import { digest, fold, type Node, type SectionName } from './layout';

/** A value in few digits with its unit, as the field table shows it. */
export function shortValue(value: unknown, field: Field): string {
  if (typeof value === 'number') {
    const shown = toShown(value, field.display);
    const symbol = field.display.symbol ? `\u202f${field.display.symbol}` : '';
    return `${fieldText(Number(shown.toPrecision(Math.max(3, field.display.digits))))}${symbol}`;
  }
  if (typeof value === 'boolean') return value ? text.form.yes : text.form.no;
  if (typeof value !== 'string') return '';
  return field.choices.find((c) => c.value === value)?.label ?? value;
}

/** A number alone says nothing to someone who does not know the form by heart. */
function named(value: unknown, field: Field, job: unknown): string {
  const words = shortValue(value, { ...field, display: displayOf(field, job) });
  return words && `${field.label}\u00a0${words}`;
}

export function digestOf(job: unknown, fields: ReadonlyMap<string, Field>, section: SectionName): string {
  if (getAt(job, section) === null) return text.form.off;
  return digest[section]
    .map((path) => partOf(job, fields, path))
    .filter((part) => part !== '')
    .join(' · ');
}

/** What a closed entry of a list says: its first two numbers in view. */
export function entryDigest(job: unknown, nodes: readonly Node[], index: number): string {
  return fold(nodes)
    .front.flatMap((n) => (n.kind === 'field' && n.field.kind === 'number' ? [n.field] : []))
    .slice(0, 2)
    .map((field) => shortValue(getAt(job, atIndex(field.path, index)), field))
    .join(' · ');
}

function partOf(job: unknown, fields: ReadonlyMap<string, Field>, path: string): string {
  const value = getAt(job, path);
  if (Array.isArray(value))
    return path === 'tunnel.zones' ? text.form.zones({ n: value.length }) : String(value.length);
  const field = fields.get(templateOf(path));
  if (field) return named(value, field, job);
  if (value === null || typeof value !== 'object') return '';
  // A block of which one field is given.
  for (const [name, given] of Object.entries(value)) {
    const one = fields.get(templateOf(`${path}.${name}`));
    if (one && given !== null) return named(given, one, job);
  }
  return '';
}
