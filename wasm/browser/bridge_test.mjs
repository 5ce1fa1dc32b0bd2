// The browser's entry under Node: the compiled core and the runtime's script exactly as the page's worker loads them.
// Run by `make test-wasm`, which builds both first.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { before, test } from 'node:test';

const page = new URL('../../site/public/', import.meta.url);
let announced = 0;

const encode = (value) => new TextEncoder().encode(JSON.stringify(value));
const decode = (bytes) => JSON.parse(new TextDecoder().decode(bytes));
const ask = (request) => decode(globalThis.drywright(encode(request)));

before(async () => {
  await import(new URL('wasm_exec.js', page).href);
  globalThis.drywrightReady = () => announced++;
  const go = new globalThis.Go();
  const { instance } = await WebAssembly.instantiate(await readFile(new URL('drywright.wasm', page)), go.importObject);
  go.run(instance); // never settles while the core lives
});

// A live Go program keeps Node's event loop busy; nothing is left to wait for once the tests are through.
test.after(() => setImmediate(() => process.exit(process.exitCode)));

test('the function stands as soon as the program runs, and says so once', () => {
  assert.equal(typeof globalThis.drywright, 'function');
  assert.equal(announced, 1);
});

test('it describes itself and computes the demo job it describes', () => {
  const { ok, catalogue } = ask({ op: 'describe' });
  assert.equal(ok, true);
  assert.ok(catalogue.fields.length > 50, `${catalogue.fields.length} fields`);
  const answer = ask({ op: 'predict', job: catalogue.demo });
  assert.equal(answer.ok, true, answer.message);
  assert.deepEqual(answer.faults, []);
  assert.deepEqual(
    answer.result.routes.map((route) => route.kind),
    ['room', 'static_oven', 'tunnel'],
  );
});

test('the same question gives the same bytes', () => {
  const { catalogue } = ask({ op: 'describe' });
  const request = encode({ op: 'predict', job: catalogue.demo });
  assert.deepEqual(globalThis.drywright(request), globalThis.drywright(request));
});

test('a bad job comes back as faults with paths', () => {
  const { catalogue } = ask({ op: 'describe' });
  catalogue.demo.film.wet_coat_kg_per_m2 = -1;
  const answer = ask({ op: 'predict', job: catalogue.demo });
  assert.equal(answer.ok, false);
  assert.deepEqual(
    answer.faults.map((fault) => fault.path),
    ['film.wet_coat_kg_per_m2'],
  );
});

test('what is not a request is refused, and the core goes on', () => {
  for (const arguments_ of [[], [null], ['text'], [42], [{ length: 3 }], [new Uint8Array()], [encode('text')], [encode({})]]) {
    const answer = decode(globalThis.drywright(...arguments_));
    assert.equal(answer.ok, false);
    assert.ok(answer.message || answer.faults?.length, JSON.stringify(answer));
  }
  assert.equal(ask({ op: 'describe' }).ok, true);
});
