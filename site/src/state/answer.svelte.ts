/**
 * The answer, kept apart from the question. The last good result stays while a newer job is wrong or being computed;
 * `old` says that it no longer belongs to what stands in the form.
 */
import { untrack } from 'svelte';
import { isAbort, type Predicted } from '../engine/client';
import type { ApiFault, Job, Result } from '../generated/contract';

export type Phase = 'starting' | 'computing' | 'fresh' | 'refused' | 'broken';

/** The part of the engine that is needed here. */
export interface Predictor {
  predict(job: Job, signal: AbortSignal): Promise<Predicted>;
  check(job: Job, signal: AbortSignal): Promise<readonly ApiFault[]>;
}

/** The job in the form; whole says that every field of it could be read. */
export interface Question {
  job: Job;
  whole: boolean;
}

export class AnswerState {
  result = $state.raw<Result | null>(null);
  /** The same for what stands around the answers, pictures and tables: it follows when they are painted. */
  details = $state.raw<Result | null>(null);
  /** The job that the result belongs to; before the first result, the one to fall back on. */
  good = $state.raw<Job | null>(null);
  faults = $state.raw<readonly ApiFault[]>([]);
  phase = $state<Phase>('starting');
  message = $state('');
  /** Whether the result belongs to an earlier job than the one in the form. */
  old = $state(false);
  /** Counts results; announcements and pictures follow it. */
  count = $state(0);

  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | null = null;
  /** Another job was turned to, and the result in view is still that of the former. */
  turned = false;
  readonly #engine: Predictor;
  readonly #wait: number;
  readonly #painted: (then: () => void) => void;
  #last = -Infinity;

  /**
   * wait is the rest after the last of several changes in a row, in milliseconds, before a run starts: just longer than a key
   * that repeats. A change that comes alone is answered at once. painted calls back when what has just changed is in view.
   */
  constructor(engine: Predictor, wait = 40, painted = (then: () => void): void => then()) {
    this.#engine = engine;
    this.#wait = wait;
    this.#painted = painted;
  }

  /** Turns to another job. good is that of its last good answer, computed again where the first question is refused. */
  turn(good: Job | null): void {
    this.good = good;
    this.turned = true;
  }

  /** Asks for an answer to what `take` gives when the time comes. */
  schedule(take: () => Question, immediately = false): void {
    clearTimeout(this.#timer);
    const now = performance.now();
    const alone = immediately || now - this.#last > 2 * this.#wait;
    this.#last = now;
    // What runs is out of date with the first key; told now, its workers are free again when the next run starts.
    this.#running?.abort();
    this.#running = null;
    const run = (): void => void this.#run(take());
    if (alone) untrack(run);
    else this.#timer = setTimeout(run, this.#wait);
  }

  async #run({ job, whole }: Question): Promise<void> {
    const mine = new AbortController();
    this.#running = mine;
    try {
      if (whole) await this.#predict(job, mine);
      else await this.#check(job, mine);
      if (this.phase === 'refused' && this.turned) await this.#recall(mine);
    } catch (error) {
      if (isAbort(error) || this.#running !== mine) return;
      this.#take({ kind: 'broken', message: error instanceof Error ? error.message : String(error) }, job);
    }
  }

  async #predict(job: Job, mine: AbortController): Promise<void> {
    this.phase = 'computing';
    const predicted = await this.#engine.predict(job, mine.signal);
    if (this.#running === mine) this.#take(predicted, job);
  }

  /** A form that cannot be read has no answer, but what else is wrong in it is told all the same. */
  async #check(job: Job, mine: AbortController): Promise<void> {
    this.phase = 'refused';
    this.old = this.result !== null;
    const faults = await this.#engine.check(job, mine.signal);
    if (this.#running === mine) this.faults = faults;
  }

  /** Brings back the last good answer of an earlier visit, as an old one. */
  async #recall(mine: AbortController): Promise<void> {
    const { good } = this;
    if (!good || this.#running !== mine) return;
    const predicted = await this.#engine.predict(good, mine.signal);
    if (this.#running !== mine || predicted.kind !== 'answer') return;
    this.#show(predicted.result);
    this.old = true;
  }

  /** The first result is shown at once: there is no answer in view that would have to wait for it. */
  #show(result: Result): void {
    const follow = (): void => void (this.details = this.result);
    this.result = result;
    this.turned = false;
    this.count++;
    if (this.details) this.#painted(follow);
    else follow();
  }

  #take(predicted: Predicted, job: Job): void {
    if (predicted.kind === 'answer') {
      this.#show(predicted.result);
      this.good = job;
      this.faults = [];
      this.phase = 'fresh';
      this.old = false;
      return;
    }
    this.old = this.result !== null;
    this.faults = predicted.kind === 'refused' ? predicted.faults : [];
    this.message = predicted.kind === 'broken' ? predicted.message : '';
    this.phase = predicted.kind;
  }
}
