/** Turns the core's complaints into words at a field, in the unit that the field shows. */
import type { ApiFault, Block, Field } from '../generated/contract';
import { text } from '../text';
import { limitText, withUnit } from './display';
import { isWithin, templateOf } from './path';
import type { Slip } from './slips';

/** One complaint ready to be shown: which input, where in the form, and a whole sentence. */
export interface Complaint {
  path: string;
  place: string;
  sentence: string;
}

/** The field table by template. */
export type FieldIndex = ReadonlyMap<string, Field>;

export const indexFields = (fields: readonly Field[]): FieldIndex => new Map(fields.map((f) => [f.path, f]));

/** Where a path lies, in the names of the blocks around it: "Tunnel oven, Zone 2". */
export function placeOf(path: string, blocks: readonly Block[]): string {
  return blocks
    .filter(
      (b) => b.path !== '' && !b.list && b.path !== templateOf(path) && isWithin(templateOf(path), b.path),
    )
    .map((b) => {
      const list = b.path.endsWith('[]') ? b.path.slice(0, -2) : null;
      const index = list === null ? null : indexAfter(path, list);
      return index === null ? b.label : text.form.item({ item: b.label, n: index + 1 });
    })
    .join(', ');
}

function indexAfter(path: string, list: string): number | null {
  const found = new RegExp(`^${list.split('[]').map(escape).join('\\[\\d+\\]')}\\[(\\d+)\\]`).exec(path);
  return found ? Number(found[1]) : null;
}

const escape = (plain: string): string => plain.replace(/[.[\]]/g, '\\$&');

export function complainOfSlip(
  path: string,
  slip: Slip,
  fields: FieldIndex,
  blocks: readonly Block[],
): Complaint {
  const field = fields.get(templateOf(path));
  const sentence = slipText(slip, field?.label ?? path, field?.display.symbol ?? '');
  return { path, place: placeOf(path, blocks), sentence };
}

export function complainOfFault(fault: ApiFault, fields: FieldIndex, blocks: readonly Block[]): Complaint {
  return { path: fault.path, place: placeOf(fault.path, blocks), sentence: sentenceOf(fault, fields) };
}

/** What a slip is in words; a number without a unit is said without one. */
export function slipText(slip: Slip, label: string, unit: string): string {
  const { plain, unit: within } = text.slips[slip];
  return unit ? within({ label, unit }) : plain({ label });
}

/** A range, a choice or an absence is said in the field's own label and unit; everything else in the core's words. */
function sentenceOf(fault: ApiFault, fields: FieldIndex): string {
  const field = fields.get(templateOf(fault.path));
  if (field && fault.code === 'range') {
    const say = field.integer ? text.faults.whole : text.faults.range;
    return say({
      label: field.label,
      low: limitText(fault.low, field.display),
      high: withUnit(limitText(fault.high, field.display), field.display),
    });
  }
  if (field && fault.code === 'missing') return slipText('missing', field.label, field.display.symbol);
  if (field && fault.code === 'choice') {
    return text.faults.choice({ label: field.label, choices: field.choices.map((c) => c.label).join(', ') });
  }
  if (fault.got === '' || fault.code === 'range') return fault.advice || fault.text;
  return `${fault.got.charAt(0).toUpperCase()}${fault.got.slice(1)}. ${fault.advice}`.trim();
}

/**
 * All complaints of a form: slips first. Of a field with a slip the core has seen the last good value or the default,
 * not what stands there, so that only the slip counts.
 */
export function complaints(
  slips: Iterable<[string, Slip]>,
  faults: readonly ApiFault[],
  fields: FieldIndex,
  blocks: readonly Block[],
): Complaint[] {
  const own = [...slips].map(([path, slip]) => complainOfSlip(path, slip, fields, blocks));
  const taken = new Set(own.map((c) => c.path));
  return [...own, ...faults.filter((f) => !taken.has(f.path)).map((f) => complainOfFault(f, fields, blocks))];
}
