/**
 * The answer, kept apart from the question. The last good result stays while a newer job is wrong or being computed;
 * `old` says that it no longer belongs to what stands in the form.
 */
import { isAbort, type FaultTold, type Predicted } from '../engine/client';
import type { Result } from '../generated/contract';

export type Phase = 'starting' | 'computing' | 'fresh' | 'refused' | 'broken';

/** The part of the engine that is needed here. */
export interface Predictor {
  predict(job: unknown, signal: AbortSignal): Promise<Predicted>;
}

export class AnswerState {
  result = $state.raw<Result | null>(null);
  faults = $state.raw<readonly FaultTold[]>([]);
  phase = $state<Phase>('starting');
  message = $state('');
  /** Whether the result belongs to an earlier job than the one in the form. */
  old = $state(false);
  /** Counts results; announcements and pictures follow it. */
  count = $state(0);

  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | null = null;
  readonly #engine: Predictor;
  readonly #wait: number;

  /** wait is the rest after the last key, in milliseconds, before a run starts. */
  constructor(engine: Predictor, wait = 150) {
    this.#engine = engine;
    this.#wait = wait;
  }

  /** Asks for an answer to the job that `take` gives when the time comes; null means that the form is not readable. */
  schedule(take: () => unknown, immediately = false): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#run(take()), immediately ? 0 : this.#wait);
  }

  async #run(job: unknown): Promise<void> {
    this.#running?.abort();
    if (job === null) {
      this.faults = [];
      this.phase = 'refused';
      this.old = this.result !== null;
      return;
    }
    const mine = new AbortController();
    this.#running = mine;
    this.phase = 'computing';
    try {
      const predicted = await this.#engine.predict(job, mine.signal);
      if (this.#running === mine) this.#take(predicted);
    } catch (error) {
      if (isAbort(error) || this.#running !== mine) return;
      this.#take({ kind: 'broken', message: error instanceof Error ? error.message : String(error) });
    }
  }

  #take(predicted: Predicted): void {
    this.#running = null;
    if (predicted.kind === 'answer') {
      this.result = predicted.result;
      this.faults = [];
      this.phase = 'fresh';
      this.old = false;
      this.count++;
      return;
    }
    this.old = this.result !== null;
    this.faults = predicted.kind === 'refused' ? predicted.faults : [];
    this.message = predicted.kind === 'broken' ? predicted.message : '';
    this.phase = predicted.kind;
  }
}
