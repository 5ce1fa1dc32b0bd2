/** The answers to two jobs, computed by a core of their own, so that typing neither waits for them nor ends them. */
import { isAbort, type Predicted } from '../engine/client';
import type { Job } from '../generated/contract';

export interface Predictor {
  predict(job: Job, signal?: AbortSignal): Promise<Predicted>;
}

export class Comparison {
  left = $state.raw<Predicted | null>(null);
  right = $state.raw<Predicted | null>(null);
  #run: AbortController | null = null;
  readonly #engine: Predictor;

  constructor(engine: Predictor) {
    this.#engine = engine;
  }

  /** Computes both, one after the other, since an engine drops what is overtaken. */
  async ask(left: Job, right: Job): Promise<void> {
    this.stop();
    const mine = new AbortController();
    this.#run = mine;
    [this.left, this.right] = [null, null];
    const first = await this.#predict(left, mine);
    if (this.#run === mine) this.left = first;
    const second = await this.#predict(right, mine);
    if (this.#run === mine) this.right = second;
  }

  stop(): void {
    this.#run?.abort();
    this.#run = null;
  }

  async #predict(job: Job, mine: AbortController): Promise<Predicted | null> {
    if (this.#run !== mine) return null;
    try {
      return await this.#engine.predict(job, mine.signal);
    } catch (error) {
      if (isAbort(error)) return null;
      return { kind: 'broken', message: error instanceof Error ? error.message : String(error) };
    }
  }
}
