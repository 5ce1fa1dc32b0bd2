/** What stands in a helper's form, and the question made of it. Labels, units and ranges come from the catalogue. */
import type { Helper, Input } from '../generated/contract';
import { limitText, shownText, withUnit } from '../state/display';
import { readingSlips } from '../state/job.svelte';
import { slipText } from '../state/faults';
import { parsePath, templateOf } from '../state/path';
import type { UnitReader } from '../state/units';
import { text } from '../text';
import { decimalMark } from '../text/say';

/** One number of the form: its text, where that comes from, and its value in SI or what is wrong with it. */
export interface Entry {
  input: Input;
  typed: string;
  fromJob: boolean;
  si: number | null;
  /** What a text in another unit means; empty for all others. */
  meaning: string;
  wrong: string;
}

/** Fills the indices of a pattern with those of a path beside it: zones[].air_temperature_K at zones[1].humidity is zones[1].… */
export function beside(pattern: string, path: string): string {
  const indices = parsePath(path).filter((s) => typeof s === 'number');
  let n = 0;
  return pattern.replace(/\[\]/g, () => `[${indices[n++] ?? 0}]`);
}

/** The form at a field: what was typed this session, else the number of the job, else what is usual. */
export function entriesOf(
  helper: Helper,
  path: string,
  typed: ReadonlyMap<string, string>,
  at: (path: string) => unknown,
  units: UnitReader,
): Entry[] {
  const place = helper.for.find((p) => p.path === templateOf(path));
  return helper.inputs.map((input, i) => {
    const from = place?.from[i] ? at(beside(place.from[i], path)) : undefined;
    const own = typed.get(keyOf(helper, input));
    const start = typeof from === 'number' ? from : input.default;
    const shown = own ?? (start === null ? '' : shownText(start, input.display));
    return {
      input,
      typed: shown,
      fromJob: own === undefined && typeof from === 'number',
      ...read(shown, input, units),
    };
  });
}

/** Under which name a text is remembered. */
export const keyOf = (helper: Helper, input: Input): string => `${helper.kind}/${input.name}`;

function read(typed: string, input: Input, units: UnitReader): Pick<Entry, 'si' | 'wrong' | 'meaning'> {
  const { display, label } = input;
  const reading = units.read(typed, display, decimalMark());
  if (reading.kind === 'empty') return { si: null, wrong: '', meaning: '' };
  if (reading.kind !== 'number') {
    return { si: null, wrong: slipText(readingSlips[reading.kind], label, display.symbol), meaning: '' };
  }
  const meaning = reading.plain ? '' : withUnit(shownText(reading.si, display), display);
  // A limit that is typed as it is shown is inside.
  const slack = 1e-9 * Math.abs(input.high - input.low);
  if (reading.si >= input.low - slack && reading.si <= input.high + slack) {
    return { si: Math.min(Math.max(reading.si, input.low), input.high), wrong: '', meaning };
  }
  const [low, high] = [limitText(input.low, display), withUnit(limitText(input.high, display), display)];
  return { si: null, wrong: text.faults.range({ label, low, high }), meaning };
}

/** The inputs of the question, by name; null while one is missing. */
export function inputsOf(entries: readonly Entry[]): Record<string, number> | null {
  const inputs: Record<string, number> = {};
  for (const { input, si } of entries) {
    if (si === null) return null;
    inputs[input.name] = si;
  }
  return inputs;
}
