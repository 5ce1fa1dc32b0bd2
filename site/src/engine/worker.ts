/**
 * The thread that holds the core. It loads the Go runtime's script and the WebAssembly, waits for the core to register
 * `drywright`, and then passes bytes in and bytes out. It knows nothing of jobs or answers.
 */
import type { FromWorker, Source, ToWorker } from './protocol';

interface GoRuntime {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

declare global {
  var Go: new () => GoRuntime;
  var drywright: ((request: Uint8Array) => Uint8Array) | undefined;
  var drywrightReady: (() => void) | undefined;
}

const send = (message: FromWorker): void => postMessage(message);
const die = (cause: unknown): void =>
  send({ kind: 'dead', reason: cause instanceof Error ? cause.message : String(cause) });

let started: Promise<void> | null = null;

async function compile(address: string): Promise<WebAssembly.Module> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // Streaming needs the server to name the media type; some plain file servers do not.
  return response.headers.get('Content-Type')?.startsWith('application/wasm')
    ? WebAssembly.compileStreaming(response)
    : WebAssembly.compile(await response.arrayBuffer());
}

async function start(source: Source, given: WebAssembly.Module | null): Promise<void> {
  const [module] = await Promise.all([
    given ?? compile(source.wasm),
    import(/* @vite-ignore */ source.exec) as Promise<unknown>,
  ]);
  const go = new Go();
  const instance = await WebAssembly.instantiate(module, go.importObject);
  const registered = new Promise<void>((resolve) => {
    globalThis.drywrightReady = resolve;
  });
  // The program runs until its main returns, which for a live core is never.
  go.run(instance).then(() => die('the core has ended'), die);
  await registered;
  send({ kind: 'ready', module });
}

async function answer(id: number, bytes: Uint8Array): Promise<void> {
  await started;
  const call = globalThis.drywright;
  if (!call) throw new Error('the core is gone');
  send({ kind: 'answer', id, bytes: call(bytes) });
}

onmessage = (event: MessageEvent<ToWorker>): void => {
  const message = event.data;
  if (message.kind === 'start') {
    started = start(message.source, message.module);
    started.catch(die);
  } else {
    answer(message.id, message.bytes).catch(die);
  }
};
