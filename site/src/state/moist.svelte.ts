/**
 * The moist-air chart of a route, asked of the core when somebody is near to see it. One question at a time: what comes up meanwhile is
 * asked when the running one has been answered, and only the last of it.
 */
import { isAbort } from '../engine/client';
import type { Job, Kind, MoistAir, Request, Response as Reply } from '../generated/contract';

/** The part of the engine that is needed here. */
export interface Asker {
  ask(request: Request): Promise<Reply>;
}

/** What a chart is wanted of; `of` tells one answer of the page from another. */
export interface Wanted {
  job: Job;
  route: Kind;
  of: string;
}

export class MoistState {
  chart = $state.raw<MoistAir | null>(null);
  /** Which answer the chart belongs to. */
  of = $state('');
  failed = $state(false);

  #running = false;
  #next: Wanted | null = null;
  #asked = '';
  readonly #engine: Asker;

  constructor(engine: Asker) {
    this.#engine = engine;
  }

  /** Asks, unless the same was asked before. */
  want(wanted: Wanted): void {
    if (wanted.of === this.#asked) return;
    this.#asked = wanted.of;
    this.#next = wanted;
    if (!this.#running) void this.#run();
  }

  /** Asks once more after a failure. */
  again(wanted: Wanted): void {
    this.#asked = '';
    this.want(wanted);
  }

  async #run(): Promise<void> {
    this.#running = true;
    for (let wanted = this.#next; wanted; wanted = this.#next) {
      this.#next = null;
      await this.#ask(wanted);
    }
    this.#running = false;
  }

  async #ask({ job, route, of }: Wanted): Promise<void> {
    try {
      const reply = await this.#engine.ask({ op: 'moist_air', job, moist_air: { route } });
      this.failed = !reply.moist_air || !reply.ok;
      if (reply.ok && reply.moist_air) [this.chart, this.of] = [reply.moist_air, of];
    } catch (error) {
      if (!isAbort(error)) this.failed = true;
    }
  }
}
