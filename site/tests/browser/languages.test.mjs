// Languages and units: the page in German and in units of the United States says what the command says in them, keeps the
// job through every change, and leaves no English behind.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { openPage } from './browser.mjs';
import { demo, expected, serve } from './command.mjs';
import { control, Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await settled();
});

after(async () => {
  await view?.close();
  await server?.stop();
});

/** Fails with the first few texts in which something stands that should not. */
const none = (texts, wrong) => assert.deepEqual(texts.filter((t) => wrong.test(t)).slice(0, 12), []);

const said = (tag, units = 'si') => ['--language', tag, '--units', units];

/** Waits until the page shows the answers of the command to the demo job. */
const settled = (tag = 'en', units = 'si', job = demo()) => {
  const wanted = expected(job, said(tag, units));
  return screen.until(async () => {
    assert.deepEqual(await screen.answers(), wanted);
    assert.equal(await screen.old(), false);
  });
};

/** All words that can be seen or heard: texts, names and descriptions, with every fold and section open. */
async function words() {
  await view.page.waitForSelector('.trial'); // the last part to be loaded
  await view.page.evaluate(() => {
    for (const d of document.querySelectorAll('main details')) d.open = true;
    for (const b of document.querySelectorAll('.inputs h3 button[aria-expanded=false]')) b.click();
  });
  await screen.still();
  return view.page.evaluate(() => {
    const skipped = 'script, style, noscript, input, textarea, code, pre, [hidden], [lang]:not(html)';
    const texts = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode())
      if (!walk.currentNode.parentElement.closest(skipped)) texts.push(walk.currentNode.textContent.trim());
    for (const e of document.querySelectorAll('[aria-label], [title], [aria-valuetext]'))
      for (const name of ['aria-label', 'title', 'aria-valuetext']) texts.push(e.getAttribute(name) ?? '');
    return [...new Set(texts)].filter((t) => t !== '');
  });
}

test('a browser that asks for German gets it at the first visit', async () => {
  const first = await openPage(server.address, {
    prepare: (page) =>
      page.evaluateOnNewDocument(() =>
        Object.defineProperty(navigator, 'languages', { get: () => ['de-CH', 'en'] }),
      ),
  });
  try {
    await first.page.waitForSelector('#answers');
    assert.equal(await first.page.$eval('html', (e) => e.lang), 'de');
    assert.equal(await first.page.$eval('#answers', (e) => e.textContent.trim()), 'Antworten');
  } finally {
    await first.close();
  }
});

test('in German the page says what the command says in German', async () => {
  await screen.choose('de');
  await settled('de');
  assert.equal(await view.page.$eval('html', (e) => e.lang), 'de');
  const [room] = await screen.answers();
  assert.match(room.sentence, /\d,\d/, 'a decimal comma');
});

test('no English, no missing word and no decimal point is left over in German', async () => {
  const found = await words();
  const job = demo();
  // The invented names and notes of the job are the shop's own words; works are cited by their own titles, with their year,
  // and parts by their names, with their version.
  const own = new Set([job.name, job.note, ...(job.tunnel?.zones ?? []).map((z) => z.name)]);
  const seen = found.filter((t) => !own.has(t) && !/\b(?:18|19|20)\d\d\b/.test(t) && !/ \d+\.\d+\.\d+, /.test(t));
  assert.ok(seen.length > 300, `only ${seen.length} texts`);
  const english = /\b(the|and|of|with|from|is|are|not|after|before|when|water|oven|inputs?|answers?|time)\b/;
  none(seen, english);
  none(seen, /⟦|undefined|\[object/);
  const point = /\d\.\d+ (?:°C|min|h|d|s|%|g\/m²|µm|kW|m)(?![\w/])/;
  none(seen, point);
});

test('fields show the comma, and a comma and a point are both understood', async () => {
  const before = await screen.value(coat);
  await screen.type(coat, '150,5');
  const withComma = await screen.saveJob();
  await screen.type(coat, '150.5');
  const withPoint = await screen.saveJob();
  assert.equal(withComma.film.wet_coat_kg_per_m2, 0.1505);
  assert.equal(withPoint.film.wet_coat_kg_per_m2, 0.1505);
  await view.page.reload({ waitUntil: 'load' });
  await screen.until(async () => assert.equal(await screen.value(coat), '150,5'));
  assert.equal(await view.page.$eval('html', (e) => e.lang), 'de', 'the language is kept for the next visit');
  await screen.type(coat, before);
  await settled('de');
});

test('what was typed and is no number yet stands through a change of language and units', async () => {
  await screen.type(coat, '15o');
  await screen.choose('en');
  await screen.until(async () => assert.equal(await screen.value(coat), '15o'));
  await screen.type(coat, '155');
  await settled('en');
});

test('in units of the United States the page says what the command says in them', async () => {
  const si = Number(await screen.value(coat));
  await screen.choose('us');
  await settled('en', 'us');
  const us = Number(await screen.value(coat));
  // 1 oz = 28.349523125 g and 1 yd = 0.9144 m, by the international agreement of 1959; fields show nine digits.
  assert.ok(Math.abs(((us * 28.349523125) / 0.9144 ** 2 / si) - 1) < 1e-8, `${us} oz/yd² for ${si} g/m²`);
  const seen = await words();
  assert.ok(seen.some((t) => t.includes('°F')));
  // Save in a name: a diffusivity at 25 °C is what is asked for.
  none(seen.filter((t) => !t.includes('at 25 °C')), /\d\s?°C|g\/m²|\d\s?µm$/);
  assert.deepEqual(await screen.saveJob(), demo(), 'the job is in SI, whatever it is shown in');
  await screen.choose('si');
  await settled();
  assert.deepEqual(view.complaints, []);
});

test('where the browser keeps nothing, the job goes along all the same', async () => {
  const forbidden = await openPage(server.address, {
    prepare: (page) =>
      page.evaluateOnNewDocument(() => {
        for (const store of ['localStorage', 'sessionStorage'])
          Object.defineProperty(window, store, {
            get() {
              throw new DOMException('forbidden', 'SecurityError');
            },
          });
      }),
  });
  try {
    const there = new Screen(forbidden.page, forbidden.downloads);
    await forbidden.page.waitForSelector(control(coat));
    await there.type(coat, '144');
    await there.choose('de');
    await there.until(async () => assert.equal(await there.value(coat), '144'));
    assert.equal(await forbidden.page.$eval('html', (e) => e.lang), 'de');
  } finally {
    await forbidden.close();
  }
});
