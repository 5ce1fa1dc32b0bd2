import { Engine } from './client';
import type { Port, Program, Source } from './protocol';

export const hire = (): Port =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'drywright-core' }) as Port;

/** Worker, runtime script and WebAssembly lie beside the page. */
export const source = (program: Program): Source => ({
  exec: new URL('wasm_exec.js', document.baseURI).href,
  wasm: new URL(`${program}.wasm`, document.baseURI).href,
  words: new URL('words/en.json', document.baseURI).href,
});

/** The engine of a page served over http. */
export const browserEngine = (): Engine => new Engine(hire, source('core'));
