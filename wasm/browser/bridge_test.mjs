// The browser's entry under Node: the compiled programs and the runtime's script exactly as the page's workers load them.
// Run by `make test-wasm`, which builds both first.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { before, test } from 'node:test';

const page = new URL('../../site/public/', import.meta.url);
let announced = 0;

const encode = (value) => new TextEncoder().encode(JSON.stringify(value));
const decode = (bytes) => JSON.parse(new TextDecoder().decode(bytes));
/** The functions of the programs by name; each program makes its own global. */
const programs = {};
const ask = (request, program = 'core') => decode(programs[program](encode(request)));

before(async () => {
  const english = await readFile(new URL('words/en.json', page));
  await import(new URL('wasm_exec.js', page).href);
  globalThis.drywrightReady = () => announced++;
  for (const [program, name] of [
    ['core', 'drywright'],
    ['planner', 'drywrightSweep'],
    ['fitter', 'drywright'],
  ]) {
    const go = new globalThis.Go();
    const { instance } = await WebAssembly.instantiate(await readFile(new URL(`${program}.wasm`, page)), go.importObject);
    go.run(instance); // never settles while the program lives
    programs[program] = globalThis[name];
    if (program === 'core') {
      const early = decode(globalThis[name](encode({ op: 'describe' })));
      assert.match(early.message, /drywrightSpeak/);
      assert.match(globalThis.drywrightSpeak(encode({})), /tag/);
    }
    assert.equal(globalThis.drywrightSpeak(english), '');
    delete globalThis[name];
  }
});

// A live Go program keeps Node's event loop busy; nothing is left to wait for once the tests are through.
test.after(() => setImmediate(() => process.exit(process.exitCode)));

test('the functions stand as soon as their program runs, and each says so once', () => {
  for (const program of ['core', 'planner', 'fitter']) assert.equal(typeof programs[program], 'function', program);
  assert.equal(announced, 3);
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
  assert.deepEqual(programs.core(request), programs.core(request));
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

const quick = () => {
  const { demo } = ask({ op: 'describe' }).catalogue;
  Object.assign(demo, { room: null, static_oven: null });
  Object.assign(demo.numerics, { film_cells: 10, part_cells: 2, relative_tolerance: 1e-4 });
  return demo;
};
const limits = () => ({
  op: 'limits',
  job: quick(),
  limits: {
    study: { route: 'tunnel', goal: { at_exit: ['dry_through'], by_deadline: false } },
    limits: [{ variable: 'line_speed', toward: '', wanted: null, levers: false }],
  },
});

test('a sweep asks a pool, while the core goes on answering, and finds what is found one setting after the other', async () => {
  const alone = await programs.planner(encode(limits()), { pool: async (list) => list.map((r) => programs.core(r)), tell() {} }, 1);
  assert.equal(decode(alone).ok, true);
  let asked = 0;
  const host = {
    async pool(requests) {
      asked += requests.length;
      await new Promise((resolve) => setTimeout(resolve, 1));
      return requests.map((request) => programs.core(request));
    },
    tell() {},
  };
  const sweep = programs.planner(encode(limits()), host, 2);
  assert.equal(ask({ op: 'demo' }).ok, true);
  assert.deepEqual(await sweep, alone);
  assert.ok(asked > 3, `${asked} requests`);
});

test('a pool that fails ends the sweep with its words', async () => {
  const host = { pool: () => Promise.reject(new Error('cancelled')), tell() {} };
  const answer = decode(await programs.planner(encode(limits()), host, 2));
  assert.equal(answer.ok, false);
  assert.match(answer.message, /cancelled/);
  for (const arguments_ of [[], [null, null, null], [encode(limits()), null, 1], [encode(limits()), {}, 'many']]) {
    const refused = decode(await programs.planner(...arguments_));
    assert.equal(refused.ok, false);
    assert.ok(refused.message, JSON.stringify(refused));
  }
});

test('what is not a request is refused, and the core goes on', () => {
  for (const arguments_ of [[], [null], ['text'], [42], [{ length: 3 }], [new Uint8Array()], [encode('text')], [encode({})]]) {
    const answer = decode(programs.core(...arguments_));
    assert.equal(answer.ok, false);
    assert.ok(answer.message || answer.faults?.length, JSON.stringify(answer));
  }
  assert.equal(ask({ op: 'describe' }).ok, true);
});
