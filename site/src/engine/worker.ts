/**
 * The thread that holds the core. It loads the Go runtime's script and the WebAssembly, waits for the core to register
 * `drywright`, and then passes bytes in and bytes out. It knows nothing of jobs or answers. One that leads a sweep hands
 * the settings to be judged out through the page, which spreads them over other workers.
 */
import type { FromWorker, Source, ToWorker } from './protocol';
import { living } from './watch';

interface GoRuntime {
  env: Record<string, string>;
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

/** What carries out the parts of a sweep. */
interface Host {
  pool(requests: Uint8Array<ArrayBuffer>[]): Promise<Uint8Array[]>;
  tell(news: Uint8Array<ArrayBuffer>): void;
}

declare global {
  var Go: new () => GoRuntime;
  var drywright: ((request: Uint8Array) => Uint8Array<ArrayBuffer>) | undefined;
  var drywrightSweep:
    ((request: Uint8Array, host: Host, workers: number) => Promise<Uint8Array<ArrayBuffer>>) | undefined;
  var drywrightSpeak: ((language: Uint8Array) => string) | undefined;
  var drywrightReady: (() => void) | undefined;
}

const send = (message: FromWorker, transfer: Transferable[] = []): void => postMessage(message, { transfer });
const die = (cause: unknown): void =>
  send({ kind: 'dead', reason: cause instanceof Error ? cause.message : String(cause) });

const alive = living(self.name);
let started: Promise<void> | null = null;

async function unpack(packed: Blob): Promise<WebAssembly.Module> {
  const bytes = Uint8Array.from(atob(await packed.text()), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return WebAssembly.compile(await new Response(stream).arrayBuffer());
}

async function compile(address: string | Blob): Promise<WebAssembly.Module> {
  if (typeof address !== 'string') return unpack(address);
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // Streaming needs the server to name the media type; some plain file servers do not.
  return response.headers.get('Content-Type')?.startsWith('application/wasm')
    ? WebAssembly.compileStreaming(response)
    : WebAssembly.compile(await response.arrayBuffer());
}

async function load(address: string | Blob): Promise<Uint8Array> {
  if (typeof address !== 'string') return new Uint8Array(await address.arrayBuffer());
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function start(source: Source, given: WebAssembly.Module | null): Promise<void> {
  const [module, language] = await Promise.all([
    given ?? compile(source.wasm),
    load(source.words),
    source.exec === null ? null : (import(/* @vite-ignore */ source.exec) as Promise<unknown>),
  ]);
  const go = new Go();
  // The collector waits for five times what is in use, some megabytes; at twice it takes a tenth of the time of an answer.
  go.env.GOGC = '400';
  const instance = await WebAssembly.instantiate(module, go.importObject);
  const registered = new Promise<void>((resolve) => {
    globalThis.drywrightReady = resolve;
  });
  // The program runs until its main returns, which for a live core is never.
  go.run(instance).then(() => die('the core has ended'), die);
  await Promise.all([registered, alive]);
  const complaint = globalThis.drywrightSpeak?.(language);
  if (complaint) throw new Error(complaint);
  send({ kind: 'ready', module });
}

async function answer(id: number, bytes: Uint8Array): Promise<void> {
  await started;
  const call = globalThis.drywright;
  if (!call) throw new Error('the core is gone');
  const reply = call(bytes);
  send({ kind: 'answer', id, bytes: reply }, [reply.buffer]);
}

const waiting = new Map<number, (replies: Uint8Array[]) => void>();
let batches = 0;

/** Reads off a request how many settings it holds; here, where nobody waits for the thread. */
const settingsOf = (request: Uint8Array): number =>
  (JSON.parse(new TextDecoder().decode(request)) as { trials: { trials: unknown[] } }).trials.trials.length;

async function sweep(id: number, bytes: Uint8Array, workers: number): Promise<void> {
  await started;
  const call = globalThis.drywrightSweep;
  if (!call) throw new Error('the core is gone');
  const pool: Host['pool'] = (requests) =>
    new Promise((resolve) => {
      const batch = batches++;
      waiting.set(batch, resolve);
      const settings = requests.map(settingsOf);
      send(
        { kind: 'batch', batch, requests, settings },
        requests.map((r) => r.buffer),
      );
    });
  const tell: Host['tell'] = (news) => send({ kind: 'news', id, bytes: news }, [news.buffer]);
  const reply = await call(bytes, { pool, tell }, workers);
  send({ kind: 'answer', id, bytes: reply }, [reply.buffer]);
}

function carryOut(message: ToWorker): Promise<void> | undefined {
  switch (message.kind) {
    case 'start':
      return (started = start(message.source, message.module));
    case 'ask':
      return answer(message.id, message.bytes);
    case 'sweep':
      return sweep(message.id, message.bytes, message.workers);
    case 'judged':
      waiting.get(message.batch)?.(message.replies);
      waiting.delete(message.batch);
      return undefined;
  }
}

onmessage = (event: MessageEvent<ToWorker>): void => void carryOut(event.data)?.catch(die);
