/** The settings of a job in a few lines of words, for the printed sheet: everything in view of the form, no more. */
import { isUsed } from '../form/use';
import { digestOf, shortValue } from '../form/digest';
import { fold, nodesOf, type Node, type SectionName } from '../form/layout';
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job } from '../generated/contract';
import type { FieldIndex } from '../state/faults';
import { atIndex, getAt, nameOf } from '../state/path';
import { text } from '../text';
import { inside } from '../text/language';

export interface Setting {
  title: string;
  words: string;
}

const records: Partial<Record<SectionName, RecordKind>> = { film: 'adhesive', part: 'part', pile: 'fibre' };

/** What is in view of the form and yet nothing that an operator sets. */
const offSheet: ReadonlySet<string> = new Set(['static_oven.chamber', 'tunnel.coated_area_per_m_m2_per_m']);

/**
 * What an operator sets; what is computed with, and prices, stay off. Coat and ovens come first, and are the last to give way on
 * a full sheet.
 */
const rank: readonly SectionName[] = ['film', 'static_oven', 'tunnel', 'pile', 'room', 'workshop', 'part'];

export function settingsOf(job: Job, catalogue: Catalogue, fields: FieldIndex): Setting[] {
  return rank
    .filter((name) => getAt(job, name) !== null)
    .map((name) => ({ title: text.form.sections[name], words: wordsOf(job, catalogue, fields, name) }));
}

function wordsOf(job: Job, catalogue: Catalogue, fields: FieldIndex, name: SectionName): string {
  const parts: string[] = [];
  const kind = records[name];
  if (kind) {
    const id = getAt(job, `${recordKinds[kind].path}.record`);
    const record = recordOf(kind, id, catalogue);
    if (record) parts.push(record.label);
  }
  const { front } = fold(nodesOf(catalogue.fields, catalogue.blocks, name));
  // Records hold the rest of a material; blocks inside them stay off the sheet.
  const nodes = kind
    ? front.filter((n) => n.kind === 'field')
    : front.filter((n) => !offSheet.has(n.template));
  parts.push(...tell(job, nodes, null));
  return parts.join('; ') || digestOf(job, fields, name);
}

function tell(job: Job, nodes: readonly Node[], index: number | null): string[] {
  return nodes.flatMap((node) => {
    const path = index === null ? node.template : atIndex(node.template, index);
    switch (node.kind) {
      case 'field':
        return tellField(job, path, node);
      case 'oneOf':
        return node.fields
          .filter((f) => getAt(job, `${path}.${nameOf(f.path)}`) !== null)
          .map((f) => `${inside(f.label)} ${shortValue(getAt(job, `${path}.${nameOf(f.path)}`), f)}`);
      case 'list':
        return ((getAt(job, path) as unknown[] | undefined) ?? []).map(
          (_, i) => `${i + 1}) ${tell(job, node.nodes, i).join(', ')}`,
        );
      case 'block':
        return getAt(job, path) === null || !isUsed(node.block.used_when, path, (p) => getAt(job, p))
          ? []
          : tell(job, node.nodes, index);
    }
  });
}

function tellField(job: Job, path: string, node: Node & { kind: 'field' }): string[] {
  const { field } = node;
  const value = getAt(job, path);
  const unused = !isUsed(field.used_when, path, (p) => getAt(job, p));
  if (value === null || value === undefined || value === '' || value === false || unused) return [];
  if (value === true) return [inside(field.label)];
  // The kind of a block and a name speak for themselves.
  const bare = field.kind === 'text' || nameOf(path) === 'kind';
  return [bare ? shortValue(value, field) : `${inside(field.label)} ${shortValue(value, field)}`];
}
