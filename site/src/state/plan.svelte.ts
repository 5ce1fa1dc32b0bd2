/**
 * Plans: what was asked of a route beyond its answer, and what came of it. A plan belongs to the job that it was asked for;
 * when the job changes it stays in view and is called old. One sweep runs at a time: a new question ends the former one.
 */
import { isAbort } from '../engine/client';
import type { Listener } from '../engine/sweep';
import type {
  Aims,
  ApiFault,
  Goal,
  Job,
  Kind,
  Request,
  Response as Reply,
  Setting,
  Tolerance,
  Variable,
} from '../generated/contract';

/** The part of the engine that is needed here. */
export interface Sweeper {
  sweep(request: Request, signal: AbortSignal, listener?: Listener): Promise<Reply>;
  ask(request: Request, signal: AbortSignal): Promise<Reply>;
}

/** What can be turned on a route, and what the route is asked for. */
export interface Brief {
  variables: readonly Variable[];
  aims: Aims;
  /** What usually varies, by how much, and what that is. */
  usual: readonly { tolerance: Tolerance; variable: Variable }[];
}

export type Topic = 'limit' | 'limits' | 'window' | 'spread' | 'costs' | 'optimum';

/** running; done; stopped by the user or a newer question; refused with reasons; broken down. */
export type Fate = 'running' | 'done' | 'stopped' | 'refused' | 'broken';

/** What is asked, made from what is known of the route. */
export type Wording = (brief: Brief) => Omit<Request, 'job'>;

/** One plan. */
export interface Plan {
  /** Which question of its topic. */
  name: string;
  wording: Wording;
  fate: Fate;
  /** Why it was refused. */
  faults: readonly ApiFault[];
  /** Why it broke down. */
  message: string;
  /** The last that is known; of the same question, asked again, until there is news. */
  reply: Reply | null;
  /** The job and goal that the reply belongs to. */
  basis: string;
  /** Settings judged, and how many there are in all where that is known. */
  judged: number;
  total: number | null;
  begun: number;
  /** Milliseconds from the question to the first and the last news. */
  first: number;
  took: number;
}

interface Briefing extends Brief {
  basis: string;
}

export class PlanState {
  readonly #engine: Sweeper;
  readonly #take: () => Job;
  readonly #now: () => number;
  #plans = $state.raw<Readonly<Record<string, Plan>>>({});
  #briefs = $state.raw<Partial<Record<Kind, Briefing>>>({});
  #goals = $state.raw<Readonly<Record<string, Goal | undefined>>>({});
  /** What could not be read of a route is not asked for again, until the job is another one. */
  #unknown: Partial<Record<Kind, string>> = {};
  #running = $state.raw<{ key: string; stop: AbortController } | null>(null);

  /** take gives the job in the form. */
  constructor(engine: Sweeper, take: () => Job, now: () => number = () => performance.now()) {
    this.#engine = engine;
    this.#take = take;
    this.#now = now;
  }

  plan(kind: Kind, topic: Topic): Plan | null {
    return this.#plans[keyOf(kind, topic)] ?? null;
  }

  /** What is known of a route; of its last settled job, while the next one is read. */
  brief(kind: Kind): Brief | null {
    return this.#briefs[kind] ?? null;
  }

  /** The goal that was chosen for a route; null: what is usual. */
  goal(kind: Kind): Goal | null {
    return this.#goals[kind] ?? null;
  }

  choose(kind: Kind, goal: Goal | null): void {
    this.#goals = { ...this.#goals, [kind]: goal ?? undefined };
  }

  get busy(): boolean {
    return this.#running !== null;
  }

  /** What an answer about a route depends on: the job without its name, and the goal. */
  basis(kind: Kind): string {
    return JSON.stringify([{ ...this.#take(), name: '' }, this.goal(kind)]);
  }

  /** Reads off the core what can be asked of a route. */
  async learn(kind: Kind): Promise<void> {
    const basis = this.basis(kind);
    if (this.busy || this.#briefs[kind]?.basis === basis || this.#unknown[kind] === basis) return;
    const stop = new AbortController();
    this.#running = { key: '', stop };
    try {
      await this.#brief(kind, this.#take(), stop.signal);
    } catch (error) {
      if (!isAbort(error)) this.#unknown[kind] = basis; // whoever asks will be told
    } finally {
      if (this.#running?.stop === stop) this.#running = null;
    }
  }

  async ask(kind: Kind, topic: Topic, name: string, wording: Wording): Promise<void> {
    this.stop();
    const [key, basis, job, stop] = [
      keyOf(kind, topic),
      this.basis(kind),
      this.#take(),
      new AbortController(),
    ];
    const former = this.#plans[key];
    const same = former?.name === name ? former : null;
    this.#running = { key, stop };
    this.#put(key, {
      name,
      wording,
      fate: 'running',
      faults: [],
      message: '',
      reply: same?.reply ?? null,
      basis: same?.reply ? same.basis : basis,
      judged: 0,
      total: null,
      begun: this.#now(),
      first: 0,
      took: 0,
    });
    const mine = (): boolean => this.#running?.stop === stop;
    try {
      const brief = await this.#brief(kind, job, stop.signal);
      const request = { ...wording(brief), job };
      const reply = await this.#engine.sweep(request, stop.signal, {
        judged: (judged) => mine() && this.#change(key, { judged }),
        news: (news) => mine() && this.#hear(key, news, basis),
      });
      if (mine()) this.#hear(key, reply, basis);
      if (mine()) this.#change(key, { fate: 'done' });
    } catch (error) {
      if (!mine() || isAbort(error)) return;
      if (error instanceof Refusal) this.#change(key, { fate: 'refused', faults: error.faults, reply: null });
      else
        this.#change(key, {
          fate: 'broken',
          message: error instanceof Error ? error.message : String(error),
        });
    } finally {
      if (mine()) this.#running = null;
    }
  }

  /** Asks the same again, of the job as it is now. */
  again(kind: Kind, topic: Topic): void {
    const plan = this.plan(kind, topic);
    if (plan) void this.ask(kind, topic, plan.name, plan.wording);
  }

  /** Ends what runs; what is known of it stays. */
  stop(): void {
    const running = this.#running;
    if (!running) return;
    this.#running = null;
    running.stop.abort();
    if (this.#plans[running.key]) this.#change(running.key, { fate: 'stopped' });
  }

  /** The job with settings of a route put in. */
  async apply(kind: Kind, trial: Setting[]): Promise<Job> {
    this.stop();
    const stop = new AbortController();
    // What the page would read off the core meanwhile waits, or it would take the place of this.
    this.#running = { key: '', stop };
    try {
      const study = { route: kind, goal: null };
      const reply = accepted(
        await this.#engine.ask({ op: 'apply', job: this.#take(), study, setting: trial }, stop.signal),
      );
      if (!reply.job) throw new Error(reply.message);
      return reply.job;
    } finally {
      if (this.#running.stop === stop) this.#running = null;
    }
  }

  async #brief(kind: Kind, job: Job, signal: AbortSignal): Promise<Brief> {
    const [basis, known] = [this.basis(kind), this.#briefs[kind]];
    if (known?.basis === basis) return known;
    const study = { route: kind, goal: this.goal(kind) };
    const said = accepted(await this.#engine.ask({ op: 'variables', job, study }, signal));
    const { variables, aims, tolerances = [], varied = [] } = said;
    if (!variables || !aims) throw new Error('The core did not say what can be asked.');
    const usual = tolerances.flatMap((tolerance, i) => {
      const variable = varied[i];
      return variable ? [{ tolerance, variable }] : [];
    });
    const brief = { basis, variables, aims, usual };
    this.#briefs = { ...this.#briefs, [kind]: brief };
    return brief;
  }

  #hear(key: string, news: Reply, basis: string): void {
    const reply = accepted(news);
    const took = this.#now() - (this.#plans[key]?.begun ?? 0);
    const total = reply.window?.expected ?? reply.spread?.planned ?? null;
    this.#change(key, { reply, basis, total, took, first: this.#plans[key]?.first || took });
  }

  #change(key: string, change: Partial<Plan>): void {
    const plan = this.#plans[key];
    if (plan) this.#put(key, { ...plan, ...change });
  }

  #put(key: string, plan: Plan): void {
    this.#plans = { ...this.#plans, [key]: plan };
  }
}

const keyOf = (kind: Kind, topic: Topic): string => `${kind}/${topic}`;

/** The core does not answer, for reasons that the user can do something about. */
class Refusal extends Error {
  readonly faults: readonly ApiFault[];
  constructor(faults: readonly ApiFault[]) {
    super(faults.map((f) => f.text).join(' '));
    this.faults = faults;
  }
}

function accepted(reply: Reply): Reply {
  if (reply.faults.length > 0) throw new Refusal(reply.faults);
  if (!reply.ok) throw new Error(reply.message);
  return reply;
}
