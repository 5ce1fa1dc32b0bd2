/**
 * The page's side of the core: one question at a time, the latest wins. A question that is overtaken or aborted takes
 * its worker down with it, because a running WebAssembly call cannot be interrupted. A second worker stands by with the
 * compiled module, so that the next question need not wait for one to start; idle it takes a few megabytes.
 */
import type {
  ApiFault,
  Request as ApiRequest,
  Catalogue,
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

interface Pending {
  id: number;
  resolve(reply: Reply): void;
  reject(error: Error): void;
}

export const aborted = (): DOMException => new DOMException('A newer question took its place.', 'AbortError');
export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

export class Engine {
  #port: Port | null = null;
  #standby: Port | null = null;
  #module: WebAssembly.Module | null = null;
  #pending: Pending | null = null;
  readonly #starting = new Map<Port, ReturnType<typeof setTimeout>>();
  #nextId = 1;
  readonly #hire: () => Port;
  readonly #source: Source;

  /** module is a core that is compiled already, for an engine beside another one. */
  constructor(hire: () => Port, source: Source, module: WebAssembly.Module | null = null) {
    this.#hire = hire;
    this.#source = source;
    this.#module = module;
  }

  /** Any question, with the answer as the core gives it. */
  ask(request: ApiRequest, signal?: AbortSignal): Promise<Reply> {
    return this.#ask(request, signal);
  }

  /** Fields, records, the demo job and the default job. */
  async describe(): Promise<Catalogue> {
    const reply = await this.#ask({ op: 'describe' });
    if (!reply.ok || !reply.catalogue) throw new EngineError(reply.message);
    return reply.catalogue;
  }

  async predict(job: unknown, signal?: AbortSignal): Promise<Predicted> {
    return this.#judge(await this.#ask({ op: 'predict', job }, signal));
  }

  /** All faults of a job, without computing it. */
  async check(job: unknown, signal?: AbortSignal): Promise<readonly ApiFault[]> {
    const reply = await this.#ask({ op: 'check', job }, signal);
    if (reply.ok || reply.faults.length > 0) return reply.faults;
    this.#replace();
    throw new EngineError(reply.message);
  }

  /** The compiled core, once it has been fetched, for others to start from. */
  get module(): WebAssembly.Module | null {
    return this.#module;
  }

  /** Starts the worker without asking anything, so that loading overlaps with drawing the page. */
  warm(): void {
    this.#worker();
  }

  close(): void {
    this.#dismiss(aborted());
    this.#standby?.terminate();
    this.#standby = null;
  }

  #judge(reply: Reply): Predicted {
    if (reply.ok && reply.result) {
      // Only now, since while a question runs the machine has better things to do.
      if (this.#module) this.#standby ??= this.#start();
      return { kind: 'answer', result: reply.result };
    }
    if (reply.faults.length > 0) return { kind: 'refused', faults: reply.faults };
    this.#replace();
    return { kind: 'broken', message: reply.message };
  }

  #ask(request: ApiRequest, signal?: AbortSignal): Promise<Reply> {
    if (signal?.aborted) return Promise.reject(aborted());
    if (this.#pending) this.#dismiss(aborted());
    const id = this.#nextId++;
    return new Promise<Reply>((resolve, reject) => {
      this.#pending = { id, resolve, reject };
      signal?.addEventListener('abort', () => {
        if (this.#pending?.id === id) {
          this.#replace();
        }
      });
      const bytes = new TextEncoder().encode(JSON.stringify({ ...request, units: this.#source.units }));
      this.#worker().postMessage({ kind: 'ask', id, bytes });
    });
  }

  #worker(): Port {
    if (this.#port) return this.#port;
    this.#port = this.#standby ?? this.#start();
    this.#standby = null;
    return this.#port;
  }

  #start(): Port {
    const port = this.#hire();
    port.onmessage = (event) => this.#hear(port, event.data);
    port.onerror = (event) => this.#hear(port, { kind: 'dead', reason: event.message });
    port.postMessage({ kind: 'start', source: this.#source, module: this.#module });
    // The first one has the core to fetch, and nobody knows how long that takes.
    if (this.#module) {
      const late = (): void => this.#hear(port, { kind: 'dead', reason: 'The worker did not start.' });
      this.#starting.set(port, setTimeout(late, patience));
    }
    return port;
  }

  #hear(from: Port, message: FromWorker): void {
    clearTimeout(this.#starting.get(from));
    this.#starting.delete(from);
    if (from === this.#standby && message.kind === 'dead') {
      from.terminate();
      this.#standby = null;
    }
    if (from !== this.#port) return; // standing by, or a last word of one already let go
    switch (message.kind) {
      case 'ready':
        this.#module = message.module;
        return;
      case 'dead':
        this.#dismiss(new EngineError(message.reason));
        return;
      case 'answer':
        if (this.#pending?.id === message.id) this.#settle(message.bytes);
        return;
      case 'batch':
      case 'news':
        return; // of sweeps, which this engine does not ask for
    }
  }

  #settle(bytes: Uint8Array): void {
    const pending = this.#pending;
    this.#pending = null;
    try {
      pending?.resolve(JSON.parse(new TextDecoder().decode(bytes)) as Reply);
    } catch {
      pending?.reject(new EngineError('The core answered with something that is not JSON.'));
    }
  }

  /** Lets go of a worker whose question is overtaken, or whose core has panicked and is in an unknown state. */
  #replace(): void {
    this.#dismiss(aborted());
    this.warm();
  }

  /** Lets the worker go and tells whoever waits for it. */
  #dismiss(reason: Error): void {
    this.#port?.terminate();
    this.#port = null;
    const pending = this.#pending;
    this.#pending = null;
    pending?.reject(reason);
  }
}
