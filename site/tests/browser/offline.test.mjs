// The page without a network: one visit is enough; a newer version is announced and takes over whole; one that never
// arrives in full, or arrives mixed, leaves the old one whole.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { afterEach, before, test } from 'node:test';
import { openPage } from './browser.mjs';
import { demo, expected, serve } from './command.mjs';
import { Screen } from './screen.mjs';
import { copyOf, laterThan, serveFiles } from './versions.mjs';

const coat = 'film.wet_coat_kg_per_m2';
let built, view, host;

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

const screenOf = (page) => new Screen(page, view.downloads);

/** Waits until all of the page lies on the machine. */
const kept = (screen) =>
  screen.until(async () => assert.match(await screen.text('#offline-state'), /opens without a network/));

/** Which version page and script of a window are. */
const version = (page) =>
  page.evaluate(() => [document.documentElement.dataset.version ?? '1', document.documentElement.dataset.script ?? '1']);

/** How many whole or partial versions the browser keeps. */
const versions = (page) => page.evaluate(async () => (await caches.keys()).length);

/** Loads the page anew, as a later visit does. */
async function visit(screen) {
  await screen.page.reload({ waitUntil: 'load' });
  await screen.settled();
}

/** Has the browser ask for a newer version now instead of within its hour; says whether a whole one came. */
const look = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => undefined);
    while (registration.installing) await new Promise((resolve) => setTimeout(resolve, 50));
    return registration.waiting !== null;
  });

test('after one visit all of the page works with the server stopped', async () => {
  const server = await serve();
  view = await openPage(server.address);
  const screen = screenOf(view.page);
  await kept(screen);
  await server.stop();
  await visit(screen);
  // The detail comes behind the answers.
  await screen.until(async () => assert.deepEqual(await screen.answers(), expected(demo())));
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 0.18;
  await screen.type(coat, '180');
  await screen.until(async () => assert.deepEqual(await screen.answers(), expected(job)));
  // What is loaded later is there, too: pictures, planning, trials, the list of parts.
  await view.page.waitForSelector('.screen figure');
  await view.page.$eval('.screen figure', (e) => e.scrollIntoView());
  await view.page.waitForSelector('.screen figure svg.plot');
  await view.page.waitForSelector('.plan');
  await view.page.waitForSelector('.trial');
  await screen.press('section[aria-labelledby=about] details summary');
  await view.page.waitForSelector('#parts li');
  assert.deepEqual(view.elsewhere, []);
  assert.deepEqual(view.complaints.filter((c) => !/sw\.js/.test(c)), [], 'only the look for updates may fail');
});

test('a newer version is announced, waits to be asked, and takes over all windows at once, whole', async () => {
  host = await serveFiles(built);
  view = await openPage(host.address);
  const screen = screenOf(view.page);
  await kept(screen);
  await visit(screen);
  await screen.type(coat, '171');
  await screen.settled();
  await visit(screen); // leaving keeps the job
  const other = await view.another();
  await other.bringToFront();
  await screenOf(other).settled();
  await view.page.bringToFront();

  host.files = laterThan(built, '2');
  host.asked = [];
  assert.ok(await look(view.page));
  assert.ok(!host.asked.includes('core.wasm'), 'what has not changed is not fetched again');
  await screen.until(async () => assert.match(await screen.text('#update'), /new version .* is ready/));
  assert.deepEqual(await version(view.page), ['1', '1']);
  await visit(screen);
  assert.deepEqual(await version(view.page), ['1', '1'], 'nobody has asked for it yet');

  await screen.press('#update button');
  await screen.until(async () => {
    assert.deepEqual(await version(view.page), ['2', '2']);
    assert.deepEqual(await version(other), ['2', '2']);
  });
  await screen.settled();
  await screen.until(async () => assert.equal(await screen.value(coat), '171', 'the job is still there'));
  assert.equal(await screen.visible('#update'), false);
  await screen.until(async () => assert.equal(await versions(view.page), 1, 'the old version is gone'));
});

for (const [name, fault] of [
  ['whose files cannot all be had', (path) => (path === 'theme.js' ? 'missing' : null)],
  ['that is cut off in the middle of a file', (path) => (path === 'theme.js' ? 'cut' : null)],
]) {
  test(`an update ${name} leaves the old version whole, and comes whole later`, async () => {
    host = await serveFiles(built);
    view = await openPage(host.address);
    const screen = screenOf(view.page);
    await kept(screen);
    await visit(screen);
    host.files = laterThan(built, '2');
    host.fault = fault;
    assert.equal(await look(view.page), false);
    await visit(screen);
    assert.deepEqual(await version(view.page), ['1', '1']);
    assert.equal(await screen.visible('#update'), false);
    host.fault = () => null;
    assert.ok(await look(view.page));
    await screen.press('#update button');
    await screen.until(async () => assert.deepEqual(await version(view.page), ['2', '2']));
  });
}

test('an update whose files do not belong together is not taken', async () => {
  host = await serveFiles(built);
  view = await openPage(host.address);
  const screen = screenOf(view.page);
  await kept(screen);
  await visit(screen);
  // The list of version 2, the page of version 3: a server in the middle of being filled.
  const mixed = laterThan(built, '2');
  mixed.set('index.html', laterThan(built, '3').get('index.html'));
  host.files = mixed;
  assert.equal(await look(view.page), false);
  await visit(screen);
  assert.deepEqual(await version(view.page), ['1', '1']);
});

test('the network lost in the middle of an update leaves the old version at work, without any network', async () => {
  host = await serveFiles(built);
  view = await openPage(host.address);
  const screen = screenOf(view.page);
  await kept(screen);
  await visit(screen);
  host.files = laterThan(built, '2');
  host.fault = (path) => (path === 'sw.js' ? null : 'silent');
  host.asked = [];
  const outcome = look(view.page);
  await screen.until(async () => assert.ok(host.asked.filter((p) => p !== 'sw.js').length > 0));
  await host.stop();
  host = undefined;
  assert.equal(await outcome, false);
  await visit(screen);
  assert.deepEqual(await version(view.page), ['1', '1']);
  await screen.until(async () => assert.deepEqual(await screen.answers(), expected(demo())));
});
