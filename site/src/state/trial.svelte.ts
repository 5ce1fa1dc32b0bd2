/**
 * A trial of the user's own: its text, what the core recognises in it, the question, and what came of the fit. A fit belongs to
 * the job, text and question that it was asked for; when one of them changes it stays in view and is called old.
 */
import { SvelteMap } from 'svelte/reactivity';
import { isAbort } from '../engine/client';
import type {
  ApiFault,
  Fit,
  FitOutcome,
  Job,
  Quantity,
  Request,
  Response as Reply,
  Table,
  TrialChoice,
  TrialForm,
  TrialForms,
  TrialKind,
} from '../generated/contract';
import type { UnitReader } from './units';
import { questionOf, usual, type Answers, type Asked } from '../trial/question';

/** The part of the engine that is needed here. */
export interface Asker {
  ask(request: Request, signal?: AbortSignal): Promise<Reply>;
}

/** idle; running; done; stopped by the user or a change; refused with reasons; broken down. */
export type Fate = 'idle' | 'running' | 'done' | 'stopped' | 'refused' | 'broken';

/** Where a text came from: typed or pasted, a file, or the invented example. */
export type Origin = { kind: 'typed' } | { kind: 'file'; name: string } | { kind: 'invented' };

export class TrialState {
  kind = $state<TrialKind>('weight');
  /** Reads numbers with any unit; null until it has been loaded. */
  units = $state.raw<UnitReader | null>(null);
  text = $state('');
  origin = $state.raw<Origin>({ kind: 'typed' });
  forms = $state.raw<TrialForms | null>(null);
  readonly choices = new SvelteMap<number, TrialChoice>();
  answers = $state<Answers>(usual());

  table = $state.raw<Table | null>(null);
  /** Why the text is no table. */
  unread = $state.raw<readonly ApiFault[]>([]);
  reading = $state(false);

  fate = $state<Fate>('idle');
  outcome = $state.raw<FitOutcome | null>(null);
  faults = $state.raw<readonly ApiFault[]>([]);
  message = $state('');
  begun = $state(0);
  /** What the fit in view was asked for. */
  basis = $state('');

  #fitting: AbortController | null = null;
  #read: AbortController | null = null;
  #turn: Promise<unknown> = Promise.resolve();
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #engine: Asker;
  readonly #job: () => Job;
  readonly #wait: number;

  /** wait is the rest after the last key before a text is read [ms]. */
  constructor(engine: Asker, job: () => Job, wait = 200) {
    this.#engine = engine;
    this.#job = job;
    this.#wait = wait;
  }

  get form(): TrialForm | undefined {
    return this.forms?.kinds.find((k) => k.kind === this.kind);
  }

  /** The question as it stands; null until the forms are known. */
  get asked(): Asked | null {
    const { form } = this;
    return form ? questionOf(form, this.answers, [...this.choices.values()], this.units) : null;
  }

  /** What a fit asked for now would belong to. */
  now(): string {
    return JSON.stringify([this.#job(), this.asked?.question, this.text]);
  }

  /** What the kinds of trial want to know of the job as it stands. */
  async learn(): Promise<void> {
    try {
      const reply = await this.#ask({ op: 'trial_forms', job: this.#job() });
      if (reply.forms) this.forms = reply.forms;
    } catch {
      // The core tells nothing now; the next change of the job asks again.
    }
  }

  choose(kind: TrialKind): void {
    if (kind === this.kind) return;
    this.kind = kind;
    this.answers = usual();
    this.choices.clear();
    this.#forget();
    if (this.origin.kind === 'invented') this.put('');
    else this.#recognise(0);
  }

  /** Takes a text; typed ones are read when the typing rests. */
  put(text: string, origin: Origin = { kind: 'typed' }): void {
    this.text = text;
    this.origin = origin;
    this.choices.clear();
    this.stop();
    this.#recognise(origin.kind === 'typed' ? this.#wait : 0);
  }

  /** Says what a column, counted from one, is. */
  correct(column: number, kind: Quantity, unit: string): void {
    this.choices.set(column, { column, kind, unit });
    this.#recognise(0);
  }

  #recognise(wait: number): void {
    clearTimeout(this.#timer);
    this.#read?.abort();
    this.#read = null;
    if (this.text.trim() === '') {
      this.table = null;
      this.unread = [];
      this.reading = false;
      return;
    }
    this.reading = true;
    this.#timer = setTimeout(() => void this.#readTable(), wait);
  }

  async #readTable(): Promise<void> {
    const mine = new AbortController();
    this.#read = mine;
    const trial = { kind: this.kind, columns: [...this.choices.values()] };
    try {
      const reply = await this.#ask({ op: 'read_table', table: this.text, trial }, mine.signal);
      if (this.#read !== mine) return;
      this.table = reply.table ?? null;
      this.unread = reply.faults;
      if (reply.message !== '') this.message = reply.message;
    } catch (error) {
      if (isAbort(error) || this.#read !== mine) return;
      this.fate = 'broken';
      this.message = messageOf(error);
    }
    this.reading = false;
  }

  async fit(): Promise<void> {
    const { asked } = this;
    if (!asked || asked.slips.size > 0) return;
    this.stop();
    const mine = new AbortController();
    this.#fitting = mine;
    this.fate = 'running';
    this.faults = [];
    this.begun = performance.now();
    const basis = this.now();
    const request: Request = { op: 'fit', job: this.#job(), table: this.text, trial: asked.question };
    try {
      const reply = await this.#ask(request, mine.signal);
      if (this.#fitting !== mine) return;
      this.faults = reply.faults;
      this.message = reply.message;
      this.basis = basis;
      if (reply.ok && reply.outcome) this.outcome = reply.outcome;
      this.fate = reply.ok ? 'done' : reply.faults.length > 0 ? 'refused' : 'broken';
    } catch (error) {
      if (isAbort(error) || this.#fitting !== mine) return;
      this.fate = 'broken';
      this.message = messageOf(error);
    }
    this.#fitting = null;
  }

  stop(): void {
    if (!this.#fitting) return;
    this.#fitting.abort();
    this.#fitting = null;
    this.fate = 'stopped';
  }

  /** The job with the fit in view adopted under a name and date. The fit in view then belongs to that job. */
  async adopt(name: string, date: string): Promise<Job | null> {
    if (!this.outcome) return null;
    const adoption: Fit = { ...this.outcome.adoption, name, date, data: dataOf(this.origin) };
    return this.#change({ op: 'adopt', job: this.#job(), adoption });
  }

  /** The job without the fit of that name. */
  drop(name: string): Promise<Job | null> {
    return this.#change({ op: 'drop', job: this.#job(), name });
  }

  async #change(request: Request): Promise<Job | null> {
    const reply = await this.#ask(request);
    this.faults = reply.faults;
    return reply.job ?? null;
  }

  #forget(): void {
    this.stop();
    this.fate = 'idle';
    this.outcome = null;
    this.faults = [];
  }

  /** One question after the other: the engine drops what is overtaken, and none of these is. */
  #ask(request: Request, signal?: AbortSignal): Promise<Reply> {
    const asking = this.#turn.then(
      () => this.#engine.ask(request, signal),
      () => this.#engine.ask(request, signal),
    );
    this.#turn = asking;
    return asking;
  }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** What a fit remembers of its data. */
function dataOf(origin: Origin): string {
  if (origin.kind === 'file') return origin.name;
  return origin.kind === 'invented' ? 'invented example' : '';
}
