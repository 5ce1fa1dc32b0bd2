// What breaks under a page: workers that die, files that do not come, a clock that jumps. Each ends in a message at most, and
// nothing is lost. An update that breaks off stands in offline.test.mjs.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { afterEach, before, test } from 'node:test';
import { longest, openPage } from './browser.mjs';
import { demo, expected, serve } from './command.mjs';
import { Screen } from './screen.mjs';
import { copyOf, serveFiles } from './versions.mjs';

const coat = 'film.wet_coat_kg_per_m2';
let built, host, view, screen;

before(async () => {
  const server = await serve();
  built = await copyOf(server.address);
  await server.stop();
});

afterEach(async () => {
  await view?.close();
  await host?.stop();
  view = host = undefined;
});

/** Opens the page from a server that has the faults from the start. */
async function open(fault = () => null, prepare = undefined) {
  host = await serveFiles(built);
  host.fault = fault;
  view = await openPage(host.address, { prepare });
  screen = new Screen(view.page, view.downloads);
}


/** The demo job with another coat [g/m2], and what the page should say to it. */
function coated(grams) {
  const job = demo();
  job.film.wet_coat_kg_per_m2 = grams / 1000;
  return expected(job);
}

/** Has the page's workers noted, and lets the test end one as it is handed something to do. */
const watchWorkers = (page) =>
  page.evaluateOnNewDocument(() => {
    globalThis.hired = [];
    globalThis.deadly = () => false;
    globalThis.Worker = class extends Worker {
      constructor(...args) {
        super(...args);
        globalThis.hired.push(this);
        this.addEventListener('message', ({ data }) => (this.begun ||= data.kind === 'ready'));
      }
      postMessage(message, ...more) {
        const deadly = globalThis.deadly(message); // now, since what is sent may be handed over
        super.postMessage(message, ...more);
        if (deadly) setTimeout(() => this.terminate(), 2); // in the midst of it, and nobody is told
      }
    };
  });

test('a worker that is killed in mid-run is missed within a second, and the next question has another', async () => {
  await open(undefined, watchWorkers);
  await screen.settled();
  const good = expected(demo());
  await screen.until(async () => assert.deepEqual(await screen.answers(), good)); // the detail comes behind the answers
  await view.page.evaluate(() => {
    // The question after the last key; those before it are overtaken.
    globalThis.deadly = (message) =>
      message.kind === 'ask' && JSON.parse(new TextDecoder().decode(message.bytes)).job?.film.wet_coat_kg_per_m2 === 0.18;
  });
  await screen.type(coat, '180');
  await screen.until(async () => assert.match(await screen.text('[role=alert]'), /broke down/));
  assert.ok(await screen.old(), 'the last good answers stay, marked as old');
  assert.deepEqual(await screen.answers(), good);
  assert.equal(await screen.value(coat), '180', 'and what was typed stays');
  await screen.type(coat, '181');
  await screen.until(async () => assert.deepEqual(await screen.answers(), coated(181)));
  assert.equal(await view.page.$('[role=alert]'), null);
});

test('workers that are killed while nothing runs are replaced in silence', async () => {
  await open(undefined, watchWorkers);
  await screen.settled();
  await screen.until(async () => {
    const begun = await view.page.evaluate(() => globalThis.hired.map((worker) => worker.begun === true));
    assert.ok(begun.length > 1 && begun.slice(-2).every(Boolean), 'one at work, one stands by'); // others were let go
  });
  await screen.still();
  await view.page.evaluate(() => globalThis.hired.forEach((worker) => worker.terminate()));
  await screen.type(coat, '182');
  await screen.until(async () => assert.deepEqual(await screen.answers(), coated(182)));
  assert.equal(await view.page.$('[role=alert]'), null);
});

test('a search whose workers are killed says so, and can be asked again', async () => {
  await open(undefined, watchWorkers);
  await screen.settled();
  await screen.press('input[name="plan-route"][value="room"]');
  const before = await view.page.evaluate(() => globalThis.hired.length);
  await screen.press('[data-question="late"]');
  // The crew, once it has begun; the one that answers typing lives.
  await screen.until(async () => assert.ok(Number.parseInt(await screen.text('[data-progress] p span'), 10) > 0));
  await view.page.evaluate((n) => globalThis.hired.slice(n).forEach((worker) => worker.terminate()), before);
  await screen.until(async () => assert.match(await screen.text('.plan [role=alert]'), /broke down|could not/i));
  await screen.press('[data-question="late"]');
  await screen.until(async () => assert.ok(await view.page.$('.plan [data-limit]')), longest);
});

for (const [name, fault] of [
  ['is missing', 'missing'],
  ['is cut off', 'cut'],
]) {
  test(`a core that ${name} is told, and loads on a click once it is there`, async () => {
    await open((path) => (path === 'core.wasm' ? fault : null));
    await screen.until(async () => assert.match(await screen.text('.failed[role=alert]'), /could not be loaded/));
    host.fault = () => null;
    await screen.press('.failed button');
    await screen.until(async () => assert.deepEqual(await screen.answers(), expected(demo())));
  });
}

test('a core that is no WebAssembly is told', async () => {
  host = await serveFiles(new Map(built).set('core.wasm', Buffer.from('<!doctype html>')));
  view = await openPage(host.address);
  screen = new Screen(view.page, view.downloads);
  await screen.until(async () => assert.match(await screen.text('.failed[role=alert]'), /could not be loaded/));
});

test('a core for planning that does not come is told there, and typing goes on', async () => {
  await open((path) => (path === 'planner.wasm' ? 'missing' : null));
  await screen.settled();
  await screen.press('[data-question="late"]');
  await screen.until(async () => assert.ok(await screen.visible('.plan [role=alert]')));
  await screen.type(coat, '183');
  await screen.until(async () => assert.deepEqual(await screen.answers(), coated(183)));
});

test('a part of the page that does not come is told; what is there works', async () => {
  await open((path) => (/^assets\/later-.*\.js$/.test(path) ? 'missing' : null));
  await screen.settled();
  await screen.until(async () => assert.match(await screen.text('.lost[role=alert]'), /could not be loaded/));
  await screen.type(coat, '184');
  const [room] = coated(184);
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), room.sentence));
});

test('a clock that jumps by years, ahead and back, changes no answer and loses no job', async () => {
  await open(undefined, (page) =>
    page.evaluateOnNewDocument(() => {
      const Real = Date;
      const shift = () => Number(sessionStorage.getItem('shift') ?? 0);
      globalThis.Date = class extends Real {
        constructor(...given) {
          if (given.length > 0) super(...given);
          else super(Real.now() + shift());
        }
        static now() {
          return Real.now() + shift();
        }
      };
    }),
  );
  await screen.settled();
  const year = 365 * 86_400_000;
  for (const [i, jump] of [10 * year, -10 * year, 0].entries()) {
    await view.page.evaluate((ms) => sessionStorage.setItem('shift', ms), jump);
    const grams = 190 + i;
    await screen.type(coat, String(grams));
    await screen.until(async () => assert.deepEqual(await screen.answers(), coated(grams)));
    await view.page.reload({ waitUntil: 'load' });
    await screen.settled();
    assert.equal(await screen.value(coat), String(grams), 'the job that was typed last is the one that is kept');
    await screen.until(async () => assert.deepEqual(await screen.answers(), coated(grams)));
  }
  assert.deepEqual(view.complaints, []);
});
