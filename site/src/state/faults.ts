/** Turns the core's complaints into words at a field, in the unit that the field shows. */
import type { Fault, Field } from '../generated/contract';
import { text } from '../text';
import { limitText } from './display';
import type { Slip } from './job.svelte';
import { templateOf } from './path';

/** One complaint ready to be shown: where, and a whole sentence. */
export interface Complaint {
  path: string;
  label: string;
  sentence: string;
}

export type FieldIndex = ReadonlyMap<string, Field>;

export const indexFields = (fields: readonly Field[]): FieldIndex => new Map(fields.map((f) => [f.path, f]));

export function complainOfSlip(path: string, slip: Slip, fields: FieldIndex): Complaint {
  const field = fields.get(templateOf(path));
  const label = field?.label ?? path;
  return { path, label, sentence: text.slips[slip](label, field?.display.symbol ?? '') };
}

export function complainOfFault(fault: Fault, fields: FieldIndex): Complaint {
  const field = fields.get(templateOf(fault.path));
  const label = field?.label ?? fault.path;
  if (field && fault.code === 'range') {
    const low = limitText(fault.low, field.display);
    const high = limitText(fault.high, field.display);
    const sentence = text.faultRange(label, low, high, field.display.symbol);
    return { path: fault.path, label, sentence: fault.advice ? `${sentence} ${fault.advice}` : sentence };
  }
  if (field && fault.code === 'missing') {
    const sentence = text.slips.missing(label, field.display.symbol);
    return { path: fault.path, label, sentence: fault.advice ? `${sentence} ${fault.advice}` : sentence };
  }
  return { path: fault.path, label, sentence: fault.text };
}

/** All complaints of a form: slips first, since a form with slips has not been put to the core. */
export function complaints(
  slips: Iterable<[string, Slip]>,
  faults: readonly Fault[],
  fields: FieldIndex,
): Complaint[] {
  const own = [...slips].map(([path, slip]) => complainOfSlip(path, slip, fields));
  const taken = new Set(own.map((c) => c.path));
  return [...own, ...faults.filter((f) => !taken.has(f.path)).map((f) => complainOfFault(f, fields))];
}
