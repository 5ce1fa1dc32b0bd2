/** Turns the core's complaints into words at a field, in the unit that the field shows. */
import type { ApiFault, Block, Field } from '../generated/contract';
import { text } from '../text';
import { limitText } from './display';
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
      return index === null ? b.label : text.form.item(b.label, index + 1);
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
  const sentence = text.slips[slip](field?.label ?? path, field?.display.symbol ?? '');
  return { path, place: placeOf(path, blocks), sentence };
}

export function complainOfFault(fault: ApiFault, fields: FieldIndex, blocks: readonly Block[]): Complaint {
  return { path: fault.path, place: placeOf(fault.path, blocks), sentence: sentenceOf(fault, fields) };
}

/** A range, a choice or an absence is said in the field's own label and unit; everything else in the core's words. */
function sentenceOf(fault: ApiFault, fields: FieldIndex): string {
  const field = fields.get(templateOf(fault.path));
  if (field && fault.code === 'range') {
    const [low, high] = [limitText(fault.low, field.display), limitText(fault.high, field.display)];
    const say = field.integer ? text.faultWhole : text.faultRange;
    return say(field.label, low, high, field.display.symbol);
  }
  if (field && fault.code === 'missing') return text.slips.missing(field.label, field.display.symbol);
  if (field && fault.code === 'choice') {
    return text.faultChoice(
      field.label,
      field.choices.map((c) => c.label),
    );
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
