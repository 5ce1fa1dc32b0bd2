// What the page says to a job is what the command says, to the last digit: for the worked examples, the kept jobs of every
// version, and every request of testdata/requests; on the screen and from its core, in both systems of units.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { openPage } from './browser.mjs';
import { answer, example, expected, serve } from './command.mjs';
import { Screen } from './screen.mjs';
import { copyOf } from './versions.mjs';

const data = new URL('../../../testdata/', import.meta.url);
const filesIn = (folder) =>
  existsSync(new URL(folder, data))
    ? readdirSync(new URL(folder, data))
        .filter((name) => name.endsWith('.json'))
        .map((name) => [`${folder}${name}`, JSON.parse(readFileSync(new URL(folder + name, data), 'utf8'))])
    : [];

const jobs = [
  ...['sleeves', 'shop', 'line', 'faster'].map((which) => [`demo --which ${which}`, example(which)]),
  ...filesIn('jobs/'),
  ...filesIn('requests/').flatMap(([name, request]) => (request.op === 'predict' ? [[name, request.job]] : [])),
];

let server, view, screen, worker;

before(async () => {
  server = await serve();
  worker = [...(await copyOf(server.address)).keys()].find((path) => /^assets\/worker-.*\.js$/.test(path));
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('[role=tab]');
});

after(async () => {
  await view?.close();
  await server?.stop();
});

/** What the page's own core answers to a request: its worker, started as the page starts it. */
const ask = (request) =>
  view.page.evaluate(
    (script, asked) =>
      new Promise((resolve, reject) => {
        const thread = new Worker(script, { type: 'module', name: `numbers ${Math.random()}` });
        const end = (settle, value) => {
          thread.terminate();
          settle(value);
        };
        thread.onerror = (event) => end(reject, new Error(event.message));
        thread.onmessage = ({ data: { kind, bytes, reason } }) => {
          if (kind === 'dead') end(reject, new Error(reason));
          else if (kind === 'answer') end(resolve, JSON.parse(new TextDecoder().decode(bytes)));
        };
        const at = (path) => new URL(path, document.baseURI).href;
        const source = { exec: at('wasm_exec.js'), wasm: at('core.wasm'), words: at('words/en.json') };
        thread.postMessage({ kind: 'start', source, module: null });
        thread.postMessage({ kind: 'ask', id: 1, bytes: new TextEncoder().encode(JSON.stringify(asked)) });
      }),
    worker,
    request,
  );

/**
 * All that is printed of a result, with its place: the numbers behind it differ in their last digits, since the two processors
 * round some functions differently.
 */
const textsOf = (value, path = '') =>
  typeof value === 'string'
    ? [`${path} ${value}`]
    : value && typeof value === 'object'
      ? Object.entries(value).flatMap(([key, inner]) => textsOf(inner, `${path}/${key}`))
      : [];

for (const units of ['si', 'us']) {
  if (units !== 'si') test(`the page gives its numbers in ${units}`, () => screen.choose(units)); // it begins with SI

  for (const [name, job] of jobs) {
    test(`${name}, on the screen, in ${units}`, async () => {
      const wanted = expected(job, ['--units', units]);
      await screen.paste(JSON.stringify(job));
      await screen.until(async () => {
        assert.deepEqual(await screen.answers(), wanted);
        assert.equal(await screen.old(), false);
      });
    });

    test(`${name}, every text of the result, in ${units}`, async () => {
      const { result } = await ask({ op: 'predict', job, units });
      const wanted = textsOf(answer(job, ['--units', units]));
      assert.ok(wanted.length > 100);
      assert.deepEqual(textsOf(result), wanted);
    });
  }
}
