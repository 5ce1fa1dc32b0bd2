/** The settings of a job as facts and small tables, for the printed sheet: everything in view of the form, no more. */
import { isUsed } from '../form/use';
import { shortValue } from '../form/digest';
import { fold, nodesOf, type Node, type SectionName } from '../form/layout';
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job } from '../generated/contract';
import type { FieldIndex } from '../state/faults';
import { atIndex, getAt, nameOf } from '../state/path';
import { text } from '../text';

/** One input with its value and unit. */
export interface Fact {
  label: string;
  value: string;
}

/** One input of every entry of a list. */
export interface Row {
  label: string;
  values: string[];
}

/** A list of the job, such as the zones of a tunnel: a column for each entry, and what goes for all of them. */
export interface Grid {
  title: string;
  heads: string[];
  rows: Row[];
  alike: Fact[];
}

export interface Setting {
  title: string;
  facts: Fact[];
  grids: Grid[];
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
    .map((name) => settingOf(job, catalogue, fields, name));
}

function settingOf(job: Job, catalogue: Catalogue, fields: FieldIndex, name: SectionName): Setting {
  const setting: Setting = { title: text.form.sections[name], facts: [], grids: [] };
  const kind = records[name];
  if (kind) {
    const path = `${recordKinds[kind].path}.record`;
    const record = recordOf(kind, getAt(job, path), catalogue);
    if (record) setting.facts.push({ label: fields.get(path)?.label ?? '', value: record.label });
  }
  const { front } = fold(nodesOf(catalogue.fields, catalogue.blocks, name));
  // Records hold the rest of a material; blocks inside them stay off the sheet.
  const nodes = kind
    ? front.filter((n) => n.kind === 'field')
    : front.filter((n) => !offSheet.has(n.template));
  setting.facts.push(...factsOf(job, nodes, null));
  setting.grids = gridsOf(job, nodes, setting.title);
  return setting;
}

/** The path of a node, in an entry of a list where there is one. */
const pathOf = (node: Node, index: number | null): string =>
  index === null ? node.template : atIndex(node.template, index);

/** Whether a block is there and counts. */
const counts = (job: Job, node: Node & { kind: 'block' }, path: string): boolean =>
  getAt(job, path) !== null && isUsed(node.block.used_when, path, (p) => getAt(job, p));

const isName = (node: Node): boolean => node.kind === 'field' && node.field.kind === 'text';
/** The time of a state means nothing where no other state follows. */
const isState = (node: Node): boolean => nameOf(node.template) !== 'time_s';
/** Whether a list has one entry without a name, which reads better among the facts. */
const alone = (job: Job, node: Node & { kind: 'list' }): boolean =>
  (getAt(job, node.template) as unknown[] | null)?.length === 1 && !node.nodes.some(isName);

function factsOf(job: Job, nodes: readonly Node[], index: number | null): Fact[] {
  return nodes.flatMap((node) => {
    const path = pathOf(node, index);
    switch (node.kind) {
      case 'field':
        return factOf(job, path, node);
      case 'oneOf':
        return node.fields.flatMap((field) => {
          const value = getAt(job, `${path}.${nameOf(field.path)}`);
          return value === null ? [] : [{ label: field.label, value: shortValue(value, field) }];
        });
      case 'list':
        return alone(job, node) ? factsOf(job, node.nodes.filter(isState), 0) : [];
      case 'block':
        return counts(job, node, path) ? factsOf(job, node.nodes, index) : [];
    }
  });
}

function factOf(job: Job, path: string, { field }: Node & { kind: 'field' }): Fact[] {
  const value = getAt(job, path);
  const unused = !isUsed(field.used_when, path, (p) => getAt(job, p));
  if (value === null || value === undefined || value === '' || value === false || unused) return [];
  return [{ label: field.label, value: shortValue(value, field) }];
}

/** The lists of a section, those of its blocks included. Every list that is in view of the form stands outside of lists. */
function gridsOf(job: Job, nodes: readonly Node[], section: string): Grid[] {
  return nodes.flatMap((node) => {
    if (node.kind === 'block')
      return counts(job, node, node.template) ? gridsOf(job, node.nodes, section) : [];
    const entries = node.kind === 'list' ? getAt(job, node.template) : null;
    if (node.kind !== 'list' || !Array.isArray(entries) || entries.length === 0 || alone(job, node))
      return [];
    return [{ title: `${section}: ${node.block.label}`, ...gridOf(job, node, entries.length) }];
  });
}

function gridOf(job: Job, node: Node & { kind: 'list' }, n: number): Omit<Grid, 'title'> {
  const heads = Array.from({ length: n }, (_, i) => {
    const [name] = factsOf(job, node.nodes.filter(isName), i);
    return name ? `${i + 1} ${name.value}` : String(i + 1);
  });
  const rows: Row[] = [];
  for (let i = 0; i < n; i++)
    factsOf(
      job,
      node.nodes.filter((f) => !isName(f)),
      i,
    ).forEach(({ label, value }, at, facts) => {
      let row = rows.find((r) => r.label === label);
      if (!row) {
        row = { label, values: Array<string>(n).fill('–') };
        // A fact that only later entries have stands behind the one that it follows there.
        rows.splice(rows.findIndex((r) => r.label === facts[at - 1]?.label) + 1, 0, row);
      }
      row.values[i] = value;
    });
  const isAlike = ({ values }: Row): boolean => n > 1 && values.every((v) => v === values[0]);
  return {
    heads,
    rows: rows.filter((r) => !isAlike(r)),
    alike: rows.filter(isAlike).map(({ label, values: [value = ''] }) => ({ label, value })),
  };
}
