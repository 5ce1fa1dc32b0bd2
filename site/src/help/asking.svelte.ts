/**
 * The three questions that a shop arrives with. What is known already is said at once; what needs a search is asked route
 * by route, through the same plans that the section "Plan" shows.
 */
import type { Job, Kind } from '../generated/contract';
import { limitWording, overnightWording } from '../plan/questions';
import { firstAxes, windowWording } from '../plan/windows';
import { parseNumber } from '../state/number';
import type { Plan, PlanState, Topic, Wording } from '../state/plan.svelte';

export const questionNames = ['overnight', 'settings', 'speed'] as const;
export type QuestionName = (typeof questionNames)[number];

/** The worked example that asks the same. */
export const examples: Readonly<Record<QuestionName, string>> = {
  overnight: 'shop',
  settings: 'line',
  speed: 'faster',
};

/** What is asked of a route. */
export interface Search {
  topic: Topic;
  name: string;
  wording: Wording;
}

/** The routes in the order in which they are asked. */
const order: readonly Kind[] = ['tunnel', 'static_oven', 'room'];

export class Asking {
  question = $state<QuestionName | null>(null);
  /** The wanted change of the third question, as typed. */
  percentText = $state('20');
  /** Routes whose turn has not come. */
  waiting = $state.raw<readonly Kind[]>([]);
  readonly #plans: PlanState;
  readonly #take: () => Job;
  #round = 0;

  constructor(plans: PlanState, take: () => Job) {
    this.#plans = plans;
    this.#take = take;
  }

  /** The wanted change in per cent; null where it cannot be read. */
  get percent(): number | null {
    const parsed = parseNumber(this.percentText, '%');
    return parsed.kind === 'number' && parsed.value > -100 ? parsed.value : null;
  }

  /** What the question asks of a route; null: nothing beyond its answer. */
  search(kind: Kind): Search | null {
    const percent = this.percent;
    switch (this.question) {
      case 'overnight':
        return kind === 'room' ? { topic: 'limit', name: 'overnight', wording: overnightWording } : null;
      case 'settings': {
        if (kind === 'room') return null;
        const axes = firstAxes(kind);
        return { topic: 'window', name: JSON.stringify(axes), wording: windowWording(...axes) };
      }
      case 'speed':
        if (kind === 'tunnel')
          return {
            topic: 'limit',
            name: 'more',
            wording: limitWording('line_speed', percent === null ? null : percent / 100),
          };
        if (kind === 'static_oven')
          return { topic: 'limit', name: 'short', wording: limitWording('dwell', null) };
        return this.#take().workshop.space
          ? { topic: 'limit', name: 'load', wording: limitWording('rack_load', null) }
          : null;
      case null:
        return null;
    }
  }

  /** What came of the question for a route; null while another question stands in its place. */
  plan(kind: Kind): Plan | null {
    const search = this.search(kind);
    const plan = search && this.#plans.plan(kind, search.topic);
    return plan && plan.name === search.name ? plan : null;
  }

  /** Yes or no to the change that is wanted, once it has been found for the job as it is. */
  found(kind: Kind): string {
    const plan = this.question === 'speed' ? this.plan(kind) : null;
    const known = plan?.basis === this.#plans.basis(kind);
    return (known && plan?.reply?.limits?.[0]?.answer) || '';
  }

  pick(question: QuestionName | null): void {
    this.question = question;
    if (question) void this.ask();
    else this.stop();
  }

  /** Asks every route, or one, one after the other; the next is not asked where one was ended by hand. */
  async ask(only: Kind | null = null): Promise<void> {
    const round = ++this.#round;
    const job = this.#take();
    let queue = order.filter(
      (k) => job[k] !== null && (only === null || k === only) && this.search(k) !== null,
    );
    while (queue.length > 0) {
      const [kind, ...rest] = queue as [Kind, ...Kind[]];
      this.waiting = rest;
      queue = rest;
      const search = this.search(kind);
      if (!search) continue;
      await this.#plans.ask(kind, search.topic, search.name, search.wording);
      if (round !== this.#round) return;
      if (this.#plans.plan(kind, search.topic)?.fate === 'stopped') break;
    }
    this.waiting = [];
  }

  stop(): void {
    this.#round++;
    this.waiting = [];
    this.#plans.stop();
  }
}
