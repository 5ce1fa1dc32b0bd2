// The page in one file, opened from disk as by a double click: no server, no network, and the answers of the command.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command), SINGLE (the file) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { longest, openPage } from './browser.mjs';
import { demo, expected, limit } from './command.mjs';
import { Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';
let view, screen;

before(async () => {
  if (!process.env.SINGLE) throw new Error('SINGLE must name the page in one file; run this test with: make browser-test');
  view = await openPage(pathToFileURL(process.env.SINGLE).href);
  screen = new Screen(view.page, view.downloads);
});

after(() => view?.close());

test('opens from disk on the demo, with the answers that the command gives', async () => {
  await screen.until(async () => assert.deepEqual(await screen.answers(), expected(demo())));
});

test('follows what is typed', async () => {
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 0.18;
  await screen.type(coat, '180');
  await screen.until(async () => {
    assert.deepEqual(await screen.answers(), expected(job));
    assert.equal(await screen.old(), false);
  });
  await screen.type(coat, String(demo().film.wet_coat_kg_per_m2 * 1000));
  await screen.until(async () => assert.deepEqual(await screen.answers(), expected(demo())));
});

test('keeps, saves and opens jobs', async () => {
  assert.deepEqual(await screen.saveJob(), demo());
  const job = demo();
  job.name = 'From a stick';
  await screen.openJob(JSON.stringify(job));
  await screen.until(async () => assert.equal(await view.page.$eval('#job-name', (e) => e.value), 'From a stick'));
});

test('draws, and plans with a crew of workers', async () => {
  await view.page.waitForSelector('.screen figure');
  await view.page.$eval('.screen figure', (e) => e.scrollIntoView());
  await view.page.waitForSelector('.screen figure svg.plot');
  const told = limit(demo(), 'room', 'spray_later');
  await screen.press('input[name="plan-route"][value="room"]');
  await screen.press('[data-question="late"]');
  await screen.until(async () => assert.ok((await screen.text('.plan .answer')).includes(told.text)), longest);
});

test('says where it is, and of whose parts it is made', async () => {
  await screen.until(async () => assert.match(await screen.text('#offline-state'), /one file/));
  await screen.press('section[aria-labelledby=about] details summary');
  const parts = await screen.until(async () => {
    const list = await view.page.$$eval('#parts summary', (all) => all.map((e) => e.textContent));
    assert.ok(list.length > 0);
    return list;
  });
  for (const name of ['svelte', '@observablehq/plot', 'Go, runtime']) assert.ok(parts.some((p) => p.startsWith(name)), name);
});

test('all of it without a complaint on the console or a request to anywhere', () => {
  assert.deepEqual(view.complaints, []);
  // A worker made of a Blob goes by its address as well. Firefox does not count the page itself.
  const file = pathToFileURL(process.env.SINGLE).pathname;
  assert.deepEqual([...view.asked].filter((path) => !path.startsWith('null/') && path !== file), []);
});
