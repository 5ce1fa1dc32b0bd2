// The kept requests of testdata/requests, answered by the programs that the page loads. The Go tests compare the same answers with
// native code, and compiled to WebAssembly as a whole; see cure/api/requests_test.go for the bounds and their reason.
// Run by `make test-wasm`, which builds the programs first.
import assert from 'node:assert/strict';
import { readdir, readFile } from 'node:fs/promises';
import { before, test } from 'node:test';

const page = new URL('../../site/public/', import.meta.url);
const folder = new URL('../../testdata/requests/', import.meta.url);
const closeness = 1e-9;
const tiny = 1e-12;

const programs = {};

before(async () => {
  const english = await readFile(new URL('words/en.json', page));
  await import(new URL('wasm_exec.js', page).href);
  for (const [program, name] of [
    ['core', 'drywright'],
    ['planner', 'drywrightSweep'],
    ['fitter', 'drywright'],
  ]) {
    const go = new globalThis.Go();
    const { instance } = await WebAssembly.instantiate(await readFile(new URL(`${program}.wasm`, page)), go.importObject);
    go.run(instance); // never settles while the program lives
    assert.equal(globalThis.drywrightSpeak(english), '');
    programs[program] = globalThis[name];
  }
});

// A live Go program keeps Node's event loop busy; nothing is left to wait for once the tests are through.
test.after(() => setImmediate(() => process.exit(process.exitCode)));

/** Which program the page asks; the core for all that is not here. */
const asked = {
  planner: ['variables', 'tolerances', 'apply', 'limits', 'window', 'spread', 'costs', 'optimise'],
  fitter: ['trial_forms', 'read_table', 'fit', 'adopt', 'drop'],
};

function answer(op, request) {
  if (asked.planner.includes(op)) {
    const pool = async (requests) => requests.map((bytes) => programs.core(bytes));
    return programs.planner(request, { pool, tell() {} }, 2);
  }
  return programs[asked.fitter.includes(op) ? 'fitter' : 'core'](request);
}

/** Fails where two values differ beyond what rounding explains. */
function alike(want, got, path) {
  if (typeof want === 'number' && typeof got === 'number') {
    assert.ok(Math.abs(want - got) <= closeness * Math.abs(want) + tiny, `${path}: ${got}, expected ${want}`);
  } else if (want !== null && got !== null && typeof want === 'object' && typeof got === 'object') {
    assert.deepEqual(Object.keys(got).sort(), Object.keys(want).sort(), path);
    for (const key of Object.keys(want)) alike(want[key], got[key], `${path}.${key}`);
  } else assert.strictEqual(got, want, path);
}

for (const name of (await readdir(folder)).filter((name) => name.endsWith('.json')))
  test(name, async () => {
    const request = await readFile(new URL(name, folder));
    const { op } = JSON.parse(request);
    const want = JSON.parse(await readFile(new URL(`answers/${name}`, folder)));
    const got = JSON.parse(new TextDecoder().decode(await answer(op, new Uint8Array(request))));
    // A program lists the operations that it offers, the whole core all of them.
    if (name === 'fault-operation.json') for (const a of [want, got]) for (const f of a.faults) f.advice = f.text = '';
    alike(want, got, 'answer');
  });
