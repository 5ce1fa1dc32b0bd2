/**
 * The one writer of the job. The document holds the last good value of every field in SI; beside it stand the texts as
 * they were typed and the slips that kept a text from becoming a number. Components call methods here and never write
 * to the document themselves.
 */
import { SvelteMap } from 'svelte/reactivity';
import type { Field, Job } from '../generated/contract';
import { toSI, shownText } from './display';
import { History, type Step } from './history';
import { parseNumber } from './number';
import { getAt, isWithin, movePaths, plain, setAt, templateOf } from './path';
import type { Memo, Slip, Slipped } from './slips';
import type { FieldIndex } from './faults';
import { decimalMark } from '../text/say';
import type { UnitReader } from './units';

/** What a text that was read in vain is told to be. */
export const readingSlips = {
  empty: 'missing',
  type: 'number',
  choice: 'unit',
  conflict: 'unit',
  twice: 'twice',
} as const;

export class JobDocument {
  /** The document in SI. Read it freely; write through the methods. */
  readonly job: Job;
  #job: Job;
  readonly slips = new SvelteMap<string, Slip>();
  #typed = new SvelteMap<string, string>();
  #parked = new SvelteMap<string, unknown>();
  #units: UnitReader | null = null;
  #revision = $state(0);
  #history = new History();
  #within = false;

  constructor(initial: Job, slips: readonly Slipped[] = []) {
    this.#job = $state(plain(initial));
    this.job = this.#job;
    this.#slip(slips);
  }

  get canUndo(): boolean {
    return this.#revision >= 0 && this.#history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.#revision >= 0 && this.#history.future.length > 0;
  }

  /** Counts every change; whoever must act on changes reads this. */
  get revision(): number {
    return this.#revision;
  }

  at(path: string): unknown {
    return getAt(this.#job, path);
  }

  /** A copy without reactivity, to send, to keep or to save. */
  snapshot(): Job {
    return plain(this.#job);
  }

  /** The job with the texts that are no values yet: all that is needed to bring the form back as it stands. */
  memo(): Memo {
    const slips = [...this.slips].map(([path, slip]) => ({ path, text: this.#typed.get(path) ?? '', slip }));
    return { job: this.snapshot(), slips };
  }

  /** What stands in a field: the text as typed, or the value in the unit of display. */
  text(path: string, field: Field): string {
    const typed = this.#typed.get(path);
    if (typed !== undefined) return typed;
    const value = this.at(path);
    if (typeof value === 'number') return shownText(value, field.display);
    return typeof value === 'string' ? value : '';
  }

  /** Takes a text into a number field. A text that is no number is kept, and so is the last good value. */
  type(path: string, text: string, field: Field): void {
    this.#mark(path, true);
    this.#typed.set(path, text);
    const slip = this.#read(path, text, field);
    if (slip) this.slips.set(path, slip);
    else this.slips.delete(path);
    this.#revision++;
  }

  #read(path: string, text: string, field: Field): Slip | null {
    const parsed = parseNumber(text, field.display.symbol);
    if (parsed.kind === 'empty') {
      if (!field.optional) return 'missing';
      setAt(this.#job, path, null);
      return null;
    }
    if (parsed.kind === 'number') return this.#take(path, toSI(parsed.value, field.display), field);
    const reading = this.#units?.read(text, field.display, decimalMark());
    if (reading?.kind !== 'number') return reading ? readingSlips[reading.kind] : 'number';
    return this.#take(path, reading.si, field);
  }

  #take(path: string, si: number, field: Field): Slip | null {
    if (field.integer && !Number.isInteger(si)) return 'whole';
    setAt(this.#job, path, si);
    return null;
  }

  /** From now on texts with any unit are read; those that were typed before are read again. */
  understand(units: UnitReader, fields: FieldIndex): void {
    this.#units = units;
    this.#within = true; // it belongs to the step in which it was typed
    for (const [path, slip] of [...this.slips]) {
      const field = fields.get(templateOf(path));
      if (slip === 'number' && field) this.type(path, this.#typed.get(path) ?? '', field);
    }
    this.#within = false;
  }

  /** Forgets the text that was typed: the value stands there in the unit of the field. */
  settle(path: string): void {
    this.#typed.delete(path);
  }

  /** Sets a choice, a switch or a name. */
  set(path: string, value: string | boolean | number | null): void {
    this.#mark(path, typeof value === 'string');
    setAt(this.#job, path, value);
    this.#revision++;
  }

  /** Puts a whole block in place: a record of the catalogue, or a block switched on. Texts typed below it are void. */
  put(path: string, block: unknown): void {
    this.#mark(path);
    setAt(this.#job, path, plain(block));
    this.#forget(path);
    this.#revision++;
  }

  /** Switches an optional block on or off. Switched off it is parked, so that switching on brings back its numbers. */
  toggle(path: string, on: boolean, fresh: () => unknown): void {
    if (on) {
      this.put(path, this.#parked.get(path) ?? fresh());
    } else {
      this.#parked.set(path, plain(this.at(path)));
      this.put(path, null);
    }
  }

  /** Says by which one field a one-of block (humidity) is given; the others become null. */
  giveBy(path: string, name: string, value: number): void {
    const block = this.at(path) as Record<string, number | null>;
    const before = Object.entries(block).find(([, v]) => v !== null);
    if (before) this.#parked.set(`${path}.${before[0]}`, before[1]);
    const parked = this.#parked.get(`${path}.${name}`);
    const next = Object.fromEntries(Object.keys(block).map((k) => [k, null as number | null]));
    next[name] = typeof parked === 'number' ? parked : value;
    this.put(path, next);
  }

  add(list: string, item: unknown): void {
    this.#mark(list);
    (this.at(list) as unknown[]).push(plain(item));
    this.#revision++;
  }

  remove(list: string, index: number): void {
    this.#mark(list);
    (this.at(list) as unknown[]).splice(index, 1);
    this.#follow(list, (i) => (i === index ? null : i > index ? i - 1 : i));
  }

  move(list: string, from: number, to: number): void {
    const items = this.at(list) as unknown[];
    if (to < 0 || to >= items.length) return;
    this.#mark(list);
    items.splice(to, 0, ...items.splice(from, 1));
    this.#follow(list, (i) =>
      i === from ? to : i > from && i <= to ? i - 1 : i < from && i >= to ? i + 1 : i,
    );
  }

  /** Replaces the whole document as one step that can be undone: a setting found, a fit adopted, another tab's version. */
  replace(job: Job, slips: readonly Slipped[] = []): void {
    this.#mark('');
    this.#become({ job, slips: [...slips] });
  }

  /** Turns to another job, which has a history of its own; gives back the one of the job that is left. */
  turn(memo: Memo, history: History): History {
    const before = this.#history;
    before.seal();
    this.#history = history;
    this.#parked.clear();
    this.#become(memo);
    return before;
  }

  /** What is typed from now on is a step of its own. */
  seal(): void {
    this.#history.seal();
  }

  /** Takes the last step back; gives the path of what was changed, or null where there is nothing to undo. */
  undo(): string | null {
    return this.#step(this.#history.undo(this.memo()));
  }

  redo(): string | null {
    return this.#step(this.#history.redo(this.memo()));
  }

  #step(step: Step | null): string | null {
    if (step) this.#become(step.memo);
    else this.#revision++; // what made no difference is gone from the history
    return step?.path ?? null;
  }

  /** Makes what belongs together one step. */
  together(path: string, change: () => void): void {
    this.#mark(path);
    this.#within = true;
    change();
    this.#within = false;
  }

  #mark(path: string, goesOn = false): void {
    if (this.#within) return;
    this.#history.mark(path, () => this.memo(), goesOn);
  }

  #become({ job, slips }: Memo): void {
    Object.assign(this.#job, plain(job));
    this.#typed.clear();
    this.slips.clear();
    this.#slip(slips);
    this.#revision++;
  }

  #slip(slips: readonly Slipped[]): void {
    for (const { path, text, slip } of slips) {
      this.#typed.set(path, text);
      this.slips.set(path, slip);
    }
  }

  #follow(list: string, to: (index: number) => number | null): void {
    for (const map of [this.#typed, this.slips] as SvelteMap<string, unknown>[]) {
      const moved = movePaths([...map], list, to);
      map.clear();
      for (const [path, value] of moved) map.set(path, value);
    }
    this.#revision++;
  }

  #forget(block: string): void {
    for (const map of [this.#typed, this.slips]) {
      for (const path of [...map.keys()]) if (isWithin(path, block)) map.delete(path);
    }
  }
}
