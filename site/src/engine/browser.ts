import { Engine } from './client';
import type { Port } from './protocol';

/** The engine of a page served over http: worker, runtime script and WebAssembly lie beside the page. */
export function browserEngine(): Engine {
  const hire = (): Port =>
    new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'drywright-core' }) as Port;
  return new Engine(hire, {
    exec: new URL('wasm_exec.js', document.baseURI).href,
    wasm: new URL('drywright.wasm', document.baseURI).href,
  });
}
