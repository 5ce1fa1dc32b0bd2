/** What the page and its worker say to each other. Bytes are JSON as cure/api reads and writes it. */

/**
 * The programs that the core comes in, each with the operations of some groups: core answers typing and judges settings,
 * planner leads sweeps, fitter fits trials.
 */
export type Program = 'core' | 'planner' | 'fitter';

/**
 * Where the worker finds the runtime's script, a program and the language file of the core: addresses, or, where all lies in
 * one file, no script, since it stands in the worker's own, and program (gzip in base64) and language themselves.
 */
export interface Source {
  readonly exec: string | null;
  readonly wasm: string | Blob;
  readonly words: string | Blob;
  /** The units in which it gives its numbers. */
  readonly units: 'si' | 'us';
}

export type ToWorker =
  | { kind: 'start'; source: Source; module: WebAssembly.Module | null }
  | { kind: 'ask'; id: number; bytes: Uint8Array }
  /** A planning question: the worker leads the search and has the settings judged by others. */
  | { kind: 'sweep'; id: number; bytes: Uint8Array; workers: number }
  /** What the others have made of a batch, in its order. */
  | { kind: 'judged'; batch: number; replies: Uint8Array[] };

export type FromWorker =
  | { kind: 'ready'; module: WebAssembly.Module }
  | { kind: 'answer'; id: number; bytes: Uint8Array }
  /** Requests of a sweep to be answered by others, with the number of settings in each. */
  | { kind: 'batch'; batch: number; requests: Uint8Array[]; settings: number[] }
  /** What a sweep knows so far. */
  | { kind: 'news'; id: number; bytes: Uint8Array }
  | { kind: 'dead'; reason: string };

/** The part of Worker that the client needs, so that tests can hand it another. */
export interface Port {
  postMessage(message: ToWorker, transfer?: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: { data: FromWorker }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}
