/**
 * The page's side of planning: one sweep at a time, led by one worker and carried out by a crew of others. The lead asks
 * for batches of settings to be judged; this thread only passes their bytes on and never reads them. A sweep that is
 * overtaken or aborted takes lead and crew down with it. Whoever has had nothing to do for a while is let go.
 */
import type { Request, Response as Reply } from '../generated/contract';
import { aborted, EngineError, patience } from './client';
import type { FromWorker, Port, Source } from './protocol';

export interface Listener {
  /** So many settings have been judged. */
  judged?(settings: number): void;
  /** What is known so far. */
  news?(reply: Reply): void;
}

interface Running extends Listener {
  id: number;
  settings: number;
  resolve(reply: Reply): void;
  reject(error: Error): void;
}

/** A batch on its way through the crew. */
interface Batch {
  number: number;
  replies: Uint8Array[];
  missing: number;
}

/** One request of a batch. */
interface Piece {
  batch: Batch;
  place: number;
  bytes: Uint8Array;
  settings: number;
}

/** What the crew starts from: the program, and its module where somebody has compiled it. */
export interface Crew {
  readonly source: Source;
  module(): WebAssembly.Module | null;
}

/** How long idle workers are kept [ms]. */
const keeping = 10_000;

export class SweepEngine {
  #lead: Port | null = null;
  readonly #crew = new Set<Port>();
  #free: Port[] = [];
  #queue: Piece[] = [];
  readonly #busy = new Map<Port, Piece>();
  readonly #starting = new Map<Port, ReturnType<typeof setTimeout>>();
  #running: Running | null = null;
  #idle: ReturnType<typeof setTimeout> | undefined;
  #nextId = 1;
  readonly #hire: () => Port;
  readonly #source: Source;
  #module: WebAssembly.Module | null = null;
  readonly #of: Crew;
  readonly #size: number;

  /** source is what the lead runs, size how many settings are judged at once. */
  constructor(hire: () => Port, source: Source, crew: Crew, size: number) {
    this.#hire = hire;
    this.#source = source;
    this.#of = crew;
    this.#size = size;
  }

  /** Asks for an answer that needs settings to be judged. */
  sweep(request: Request, signal: AbortSignal, listener: Listener = {}): Promise<Reply> {
    return this.#ask(request, signal, listener, true);
  }

  /** Asks the lead alone, for what it can tell without judging settings. */
  ask(request: Request, signal: AbortSignal): Promise<Reply> {
    return this.#ask(request, signal, {}, false);
  }

  /** Hires lead and crew for a question that is about to come; they go again where none does. */
  warm(): void {
    if (this.#running) return;
    this.#lead ??= this.#startLead();
    this.#enlist();
    this.#rest();
  }

  close(): void {
    this.#dismiss(aborted());
  }

  #ask(request: Request, signal: AbortSignal, listener: Listener, crew: boolean): Promise<Reply> {
    if (signal.aborted) return Promise.reject(aborted());
    if (this.#running) this.#dismiss(aborted());
    clearTimeout(this.#idle);
    const id = this.#nextId++;
    return new Promise<Reply>((resolve, reject) => {
      this.#running = { ...listener, id, settings: 0, resolve, reject };
      signal.addEventListener('abort', () => {
        if (this.#running?.id === id) this.#dismiss(aborted());
      });
      const bytes = new TextEncoder().encode(JSON.stringify({ ...request, units: this.#source.units }));
      this.#lead ??= this.#startLead();
      this.#lead.postMessage({ kind: 'sweep', id, bytes, workers: this.#size }, [bytes.buffer]);
      if (crew) this.#enlist();
    });
  }

  #startLead(): Port {
    return this.#start(this.#source, this.#module);
  }

  #start(source: Source, module: WebAssembly.Module | null): Port {
    const port = this.#hire();
    port.onmessage = (event) => this.#hear(port, event.data);
    port.onerror = (event) => this.#hear(port, { kind: 'dead', reason: event.message });
    port.postMessage({ kind: 'start', source, module });
    if (module) {
      const late = (): void => this.#hear(port, { kind: 'dead', reason: 'The worker did not start.' });
      this.#starting.set(port, setTimeout(late, patience));
    }
    return port;
  }

  /** Hires for so many pieces at once. */
  #enlist(pieces = this.#size): void {
    while (this.#crew.size < Math.min(this.#size, pieces)) {
      const port = this.#start(this.#of.source, this.#of.module());
      this.#crew.add(port);
      this.#free.push(port);
    }
  }

  #hear(from: Port, message: FromWorker): void {
    clearTimeout(this.#starting.get(from));
    this.#starting.delete(from);
    if (from !== this.#lead && !this.#crew.has(from)) return; // a last word of one already let go
    switch (message.kind) {
      case 'ready':
        if (from === this.#lead) this.#module = message.module;
        return;
      case 'dead':
        this.#dismiss(new EngineError(message.reason));
        return;
      case 'batch':
        this.#share(message.batch, message.requests, message.settings);
        return;
      case 'news':
        if (this.#running?.id === message.id) this.#tell(message.bytes);
        return;
      case 'answer':
        if (from !== this.#lead) this.#collect(from, message.bytes);
        else if (this.#running?.id === message.id) this.#settle(message.bytes);
    }
  }

  #share(number: number, requests: readonly Uint8Array[], settings: readonly number[]): void {
    const batch: Batch = { number, replies: [], missing: requests.length };
    requests.forEach((bytes, place) => {
      this.#queue.push({ batch, place, bytes, settings: settings[place] ?? 0 });
    });
    if (requests.length === 0) this.#lead?.postMessage({ kind: 'judged', batch: number, replies: [] });
    this.#enlist(this.#queue.length + this.#busy.size);
    this.#handOut();
  }

  #handOut(): void {
    while (this.#queue.length > 0 && this.#free.length > 0) {
      const [piece, port] = [this.#queue.shift(), this.#free.shift()];
      if (!piece || !port) return;
      this.#busy.set(port, piece);
      port.postMessage({ kind: 'ask', id: this.#nextId++, bytes: piece.bytes }, [piece.bytes.buffer]);
    }
  }

  #collect(from: Port, reply: Uint8Array): void {
    const piece = this.#busy.get(from);
    this.#busy.delete(from);
    this.#free.push(from);
    if (!piece || !this.#running) return;
    const { batch } = piece;
    batch.replies[piece.place] = reply;
    batch.missing--;
    if (batch.missing === 0) {
      const buffers = batch.replies.map((r) => r.buffer);
      this.#lead?.postMessage({ kind: 'judged', batch: batch.number, replies: batch.replies }, buffers);
    }
    this.#handOut();
    this.#running.settings += piece.settings;
    this.#running.judged?.(this.#running.settings);
  }

  #tell(bytes: Uint8Array): void {
    const reply = read(bytes);
    if (reply) this.#running?.news?.(reply);
  }

  #settle(bytes: Uint8Array): void {
    const running = this.#running;
    this.#running = null;
    const reply = read(bytes);
    if (!reply) {
      running?.reject(new EngineError('The core answered with no JSON.'));
      return;
    }
    if (reply.ok || reply.faults.length > 0) this.#rest();
    else this.#dismiss(aborted()); // a core that has panicked is in an unknown state
    running?.resolve(reply);
  }

  /** Nobody has anything to do. */
  #rest(): void {
    clearTimeout(this.#idle);
    this.#idle = setTimeout(() => this.#dismiss(aborted()), keeping);
  }

  /** Lets everyone go and tells whoever waits for them. */
  #dismiss(reason: Error): void {
    clearTimeout(this.#idle);
    for (const port of [this.#lead, ...this.#crew]) port?.terminate();
    for (const timer of this.#starting.values()) clearTimeout(timer);
    this.#lead = null;
    this.#crew.clear();
    this.#starting.clear();
    this.#busy.clear();
    this.#free = [];
    this.#queue = [];
    const running = this.#running;
    this.#running = null;
    running?.reject(reason);
  }
}

function read(bytes: Uint8Array): Reply | null {
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as Reply;
  } catch {
    return null;
  }
}
