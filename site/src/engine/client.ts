/**
 * The page's side of the core: one question at a time, the latest wins. The routes of a prediction are dealt to the
 * workers, the longest first. A running WebAssembly call cannot be interrupted: what is overtaken may finish for a moment,
 * since most runs take less time than another worker to start, and then takes its worker down with it.
 */
import type {
  ApiFault,
  Request as ApiRequest,
  Catalogue,
  Kind,
  Response as Reply,
  Result,
} from '../generated/contract';
import type { FromWorker, Port, Source } from './protocol';

/** What became of a job: an answer, a list of faults, or a core that broke down over it. */
export type Predicted =
  | { kind: 'answer'; result: Result }
  | { kind: 'refused'; faults: ApiFault[] }
  | { kind: 'broken'; message: string };

/** The core could not be loaded or died. */
export class EngineError extends Error {
  override name = 'EngineError';
}

/** How long a worker that is handed the compiled core may take to start [ms]: a hundred times what it takes. */
export const patience = 10_000;
/** How long a worker may at least go on with what is overtaken [ms]; it may as long as another one takes to start. */
const grace = 60;

/** What came of a question: the parts of its answer, and the last of them, or the one that speaks for all. */
interface Replies {
  parts: Reply[];
  last: Reply;
}

interface Question {
  parts: Reply[];
  missing: number;
  resolve(replies: Replies): void;
  reject(error: Error): void;
}

/** One request of a question. */
interface Piece {
  id: number;
  question: Question;
  bytes: Uint8Array<ArrayBuffer>;
}

export const aborted = (): DOMException => new DOMException('Overtaken.', 'AbortError');
export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

const panicked = (reply: Reply): boolean => !reply.ok && reply.faults.length === 0;

export class Engine {
  #module: WebAssembly.Module | null = null;
  #asked: Question | null = null;
  #queue: Piece[] = [];
  #idle: Port[] = [];
  readonly #busy = new Map<Port, Piece>();
  readonly #starting = new Map<Port, number>();
  /** Of those that start, and of those whose piece is overtaken. */
  readonly #clocks = new Map<Port, ReturnType<typeof setTimeout>>();
  /** The routes in the order in which they are asked for, until an answer tells how much work each is. */
  #kinds: Kind[] = ['tunnel', 'static_oven', 'room'];
  #nextId = 1;
  #grace = grace;
  #size: number;
  readonly #hire: () => Port;
  readonly #source: Source;

  /** size is how many workers share a question; module is a core that is compiled already, for an engine beside another one. */
  constructor(hire: () => Port, source: Source, size = 1, module: WebAssembly.Module | null = null) {
    this.#hire = hire;
    this.#source = source;
    this.#size = size;
    this.#module = module;
  }

  /** Any question, with the answer as the core gives it. */
  async ask(request: ApiRequest, signal?: AbortSignal): Promise<Reply> {
    return (await this.#ask([request], signal)).last;
  }

  /** Fields, records, the demo job and the default job. */
  async describe(): Promise<Catalogue> {
    const reply = await this.ask({ op: 'describe' });
    if (!reply.ok || !reply.catalogue) throw new EngineError(reply.message);
    return reply.catalogue;
  }

  async predict(job: unknown, signal?: AbortSignal): Promise<Predicted> {
    const has = job as Partial<Record<Kind, unknown>>;
    const routes = this.#kinds.filter((kind) => has[kind] !== null);
    // A job without routes is refused, whatever is asked for.
    const requests = this.#dealt(routes.length > 0 ? routes : this.#kinds).map((routes): ApiRequest => ({
      op: 'predict',
      job,
      routes,
    }));
    const { parts, last } = await this.#ask(requests, signal);
    if (last.result) return { kind: 'answer', result: this.#joined(last.result, parts) };
    return panicked(last)
      ? { kind: 'broken', message: last.message }
      : { kind: 'refused', faults: last.faults };
  }

  /** All faults of a job, without computing it. */
  async check(job: unknown, signal?: AbortSignal): Promise<readonly ApiFault[]> {
    const reply = await this.ask({ op: 'check', job }, signal);
    if (panicked(reply)) throw new EngineError(reply.message);
    return reply.faults;
  }

  /** The compiled core, once it has been fetched, for others to start from. */
  get module(): WebAssembly.Module | null {
    return this.#module;
  }

  /** Starts a worker without asking anything, so that loading overlaps with drawing the page. */
  warm(): void {
    if (this.#staff === 0) this.#start();
  }

  close(): void {
    this.#overtake(aborted());
    for (const port of [...this.#idle, ...this.#busy.keys(), ...this.#starting.keys()]) this.#dismiss(port);
  }

  get #staff(): number {
    return this.#idle.length + this.#busy.size + this.#starting.size;
  }

  /** The parts of a result in one, with its routes in the order of the core. */
  #joined(whole: Result, parts: Reply[]): Result {
    const routes = parts.flatMap((part) => part.result?.routes ?? []);
    routes.sort((a, b) => (a.kind < b.kind ? -1 : 1)); // the core's order is that of the alphabet
    const work = (of: Kind): number => routes.find((r) => r.kind === of)?.status.derivatives ?? 0;
    this.#kinds.sort((a, b) => work(b) - work(a));
    return { ...whole, routes };
  }

  /** Routes, the longest first, in as many hands as there are workers: one each, and the rest to the last. */
  #dealt(routes: readonly Kind[]): Kind[][] {
    const last = Math.max(0, Math.min(this.#size, routes.length) - 1);
    return [...routes.slice(0, last).map((kind) => [kind]), routes.slice(last)];
  }

  #ask(requests: ApiRequest[], signal?: AbortSignal): Promise<Replies> {
    if (signal?.aborted) return Promise.reject(aborted());
    this.#overtake(aborted());
    return new Promise((resolve, reject) => {
      const question: Question = { parts: [], missing: requests.length, resolve, reject };
      this.#asked = question;
      signal?.addEventListener('abort', () => {
        if (this.#asked === question) this.#overtake(aborted());
      });
      this.#queue = requests.map((request) => ({
        id: this.#nextId++,
        question,
        bytes: new TextEncoder().encode(JSON.stringify({ ...request, units: this.#source.units })),
      }));
      this.warm();
      this.#handOut();
    });
  }

  #handOut(): void {
    while (this.#queue.length > 0 && this.#idle.length > 0) {
      const [piece, port] = [this.#queue.shift(), this.#idle.shift()];
      if (!piece || !port) return;
      this.#busy.set(port, piece);
      port.postMessage({ kind: 'ask', id: piece.id, bytes: piece.bytes }, [piece.bytes.buffer]);
    }
    // Not before the first one has compiled the core: to fetch it twice would help nobody.
    if (this.#queue.length > 0 && this.#module && this.#staff < this.#size) this.#start();
  }

  #start(): void {
    const port = this.#hire();
    this.#starting.set(port, performance.now());
    port.onmessage = (event) => this.#hear(port, event.data);
    port.onerror = (event) => this.#lose(port, event.message);
    port.postMessage({ kind: 'start', source: this.#source, module: this.#module });
    // The first one has the core to fetch, and nobody knows how long that takes.
    if (this.#module) this.#time(port, patience, () => this.#lose(port, 'The worker did not start.'));
  }

  #time(port: Port, wait: number, act: () => void): void {
    this.#stopClock(port);
    this.#clocks.set(port, setTimeout(act, wait));
  }

  #stopClock(port: Port): void {
    clearTimeout(this.#clocks.get(port));
    this.#clocks.delete(port);
  }

  #hear(from: Port, message: FromWorker): void {
    switch (message.kind) {
      case 'ready':
        if (!this.#begun(from)) return; // a last word of one already let go
        this.#module = message.module;
        break;
      case 'answer':
        if (!this.#take(from, message.bytes)) return;
        break;
      case 'dead':
        this.#lose(from, message.reason);
        return;
      default:
        return; // of sweeps, which this engine does not ask for
    }
    this.#stopClock(from);
    this.#idle.push(from);
    this.#handOut();
  }

  /** A worker is ready; says whether it is still wanted. */
  #begun(from: Port): boolean {
    const since = this.#starting.get(from);
    if (since !== undefined && this.#module) this.#grace = Math.max(grace, performance.now() - since);
    return this.#starting.delete(from);
  }

  /** Takes an answer; says whether its worker may go on. */
  #take(from: Port, bytes: Uint8Array): boolean {
    const piece = this.#busy.get(from);
    if (!piece) return false; // a last word of one already let go
    const { question } = piece;
    let reply: Reply;
    try {
      reply = JSON.parse(new TextDecoder().decode(bytes)) as Reply;
    } catch {
      this.#lose(from, 'The core answered with no JSON.');
      return false;
    }
    this.#busy.delete(from);
    question.missing--;
    question.parts.push(reply);
    if (question === this.#asked && (!reply.ok || question.missing === 0)) {
      // One refusal speaks for all.
      this.#overtake();
      question.resolve({ parts: question.parts, last: reply });
    }
    if (panicked(reply)) {
      this.#replace(from); // it is in an unknown state
      return false;
    }
    return true;
  }

  /** Nobody waits for the question any more. */
  #overtake(reason?: Error): void {
    const asked = this.#asked;
    this.#asked = null;
    this.#queue = [];
    for (const port of this.#busy.keys())
      if (!this.#clocks.has(port)) this.#time(port, this.#grace, () => this.#replace(port));
    if (reason) asked?.reject(reason);
  }

  /** A worker that died or never came. The question fails, unless another one had nothing to do with it. */
  #lose(port: Port, why: string): void {
    const piece = this.#busy.get(port);
    const needed = piece ? piece.question === this.#asked : this.#staff === 1;
    const started = !this.#starting.has(port);
    if (!this.#dismiss(port)) return;
    if (needed) this.#overtake(new EngineError(why));
    else if (!started) this.#size = this.#staff; // where there is no room for another one, none is hired again
  }

  #replace(port: Port): void {
    this.#dismiss(port);
    this.#start();
    this.#handOut();
  }

  /** Lets a worker go; says whether it was still there. */
  #dismiss(port: Port): boolean {
    this.#stopClock(port);
    port.terminate();
    const before = this.#staff;
    this.#busy.delete(port);
    this.#starting.delete(port);
    this.#idle = this.#idle.filter((other) => other !== port);
    return this.#staff < before;
  }
}
