import { Engine } from './client';
import { voice, type Voice } from '../text/voice';
import type { Port, Program, Source } from './protocol';
import { freshName, watched } from './watch';

export function hire(): Port {
  const name = freshName();
  return watched(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name }), name);
}

/** Worker, runtime script and WebAssembly lie beside the page. */
export const source = (program: Program, { language, units }: Voice = voice()): Source => ({
  exec: new URL('wasm_exec.js', document.baseURI).href,
  wasm: new URL(`${program}.wasm`, document.baseURI).href,
  words: new URL(`words/${language}.json`, document.baseURI).href,
  units,
});

/** The engine of a page served over http; from the compiled core, where another one has it already. */
export const browserEngine = (speaking: Voice, module: WebAssembly.Module | null = null): Engine =>
  new Engine(hire, source('core', speaking), Math.min(3, navigator.hardwareConcurrency), module);
