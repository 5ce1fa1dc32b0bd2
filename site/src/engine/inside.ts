/**
 * The engine of the page in one file, in the place of browser.ts: worker, runtime script and core lie in the document, the
 * core compressed, and no address is asked for. Browsers let a page from disk start a worker from a Blob alone.
 */
import type * as Served from './browser';
import { Engine } from './client';
import { voice, type Voice } from '../text/voice';
import type { Port, Program, Source } from './protocol';
import { freshName, watched } from './watch';

const held = (id: string): string => document.getElementById(id)?.textContent ?? '';

const script = URL.createObjectURL(
  new Blob([held('runtime'), '\n', held('worker')], { type: 'text/javascript' }),
);
// One program does what three do for the served page.
const core = new Blob([held('core')]);

/** Each under a name of its own, since a worker waits for the lock of its name. */
export function hire(): Port {
  const name = freshName();
  return watched(new Worker(script, { name }), name);
}

export const source = (_program: Program, { language, units }: Voice = voice()): Source => ({
  exec: null,
  wasm: core,
  words: new Blob([held(`words-${language}`)]),
  units,
});

export const browserEngine = (speaking: Voice, module: WebAssembly.Module | null = null): Engine =>
  new Engine(hire, source('core', speaking), Math.min(3, navigator.hardwareConcurrency), module);

/** Whoever changes browser.ts has to change this file alike. */
type Alike<T extends typeof Served> = T;
export type Checked = Alike<{
  hire: typeof hire;
  source: typeof source;
  browserEngine: typeof browserEngine;
}>;
