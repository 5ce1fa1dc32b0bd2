/** Texts in another unit than the field's, while they stand there as they were typed. */
import type { Field } from '../generated/contract';
import { shownText } from '../state/display';
import type { JobDocument } from '../state/job.svelte';
import { parseNumber } from '../state/number';

/** What such a text means in the unit of the field; empty for all others. */
export function meaningOf(job: JobDocument, path: string, field: Field): string {
  const value = job.at(path);
  const foreign =
    field.kind === 'number' &&
    typeof value === 'number' &&
    !job.slips.has(path) &&
    parseNumber(job.text(path, field), field.display.symbol).kind === 'other';
  return foreign ? `${shownText(value, field.display)}\u00a0${field.display.symbol}`.trim() : '';
}
