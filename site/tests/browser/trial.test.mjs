// Trials in the built page, in a real browser: a table is shown as it was recognised before it is used, a fit says what the command
// says, an adopted fit changes the answers and is shown where they rest on it, and dropping it brings back what stood there.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { longest, openPage } from './browser.mjs';
import { answer, demo, fit, serve } from './command.mjs';
import { Screen } from './screen.mjs';

const data = (name) => new URL(`../../../testdata/${name}`, import.meta.url);
const ugly = (name) => readFile(data(`trials/${name}`), 'utf8');
const field = '[data-trial="text"]';

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('.trial');
  await view.page.$eval('.trial', (e) => e.scrollIntoView());
  await view.page.waitForSelector(field);
});

after(async () => {
  await view?.close();
  await server?.stop();
});

const press = (selector) => screen.press(selector);
const words = (selector) => view.page.$eval(selector, (e) => e.textContent.trim().replace(/\s+/g, ' '));
const kind = (which) => press(`input[name="trial-kind"][value="${which}"]`);

/** Puts a text into the field as a paste does. */
async function put(text) {
  await view.page.waitForSelector(field);
  await view.page.$eval(
    field,
    (e, t) => {
      e.value = t;
      e.dispatchEvent(new Event('input', { bubbles: true }));
    },
    text,
  );
}

async function example(which) {
  await kind(which);
  await press('[data-trial="example"]');
  await view.page.waitForSelector('[data-trial="fit"]');
}

async function fitted() {
  await press('[data-trial="fit"]');
  await screen.until(async () => {
    assert.equal(await view.page.$('[data-fitting]'), null, 'still fitting');
    assert.ok(await view.page.$('[data-trial="answer"]'), 'no answer');
    assert.equal(await view.page.$('[data-trial="old"]'), null, 'old');
  }, longest);
}

/** The table of numbers as it stands, a row each. */
const numbers = () =>
  view.page.$$eval('[data-trial="answer"] .numbers tbody tr', (rows) =>
    rows.map((r) => [...r.cells].map((c) => c.textContent.trim())),
  );

/** Whether a job says the same as another: file and command may write numbers differently. */
const same = (a, b) => assert.deepEqual(JSON.parse(JSON.stringify(a)), JSON.parse(JSON.stringify(b)));

test('what is recognised in a table is shown before it is used', async () => {
  await kind('weight');
  await put(await ugly('02-semicolon-decimal-comma.csv'));
  await screen.until(async () =>
    assert.match(await words('[data-trial="recognised"] dl'), /Separator semicolon ?Decimal mark comma ?Header yes.*5, all used/),
  );
  const chosen = await view.page.$$eval('[data-trial="recognised"] select', (all) => all.map((s) => s.value));
  assert.deepEqual(chosen, ['time', 'min', 'mass', 'g']);
});

test('columns can be corrected', async () => {
  await put(await ugly('21-no-units.csv'));
  await view.page.waitForSelector('[data-trial="unusable"]');
  const before = await words('[data-trial="unusable"]');
  assert.match(before, /unit/i);
  for (const [at, unit] of [
    [1, 'min'],
    [2, 'g'],
  ]) {
    await view.page.waitForSelector(`[data-trial="recognised"] .choices td:nth-child(${at}) select.unit`);
    await view.page.select(`[data-trial="recognised"] .choices td:nth-child(${at}) select.unit`, unit);
  }
  await screen.until(async () => assert.equal(await view.page.$('[data-trial="unusable"]'), null));
  assert.ok(await view.page.$('[data-trial="fit"]'));
});

test('a table that cannot be read is refused with its line, which a button shows', async () => {
  await put(await ugly('13-text-cell.csv'));
  await screen.until(async () => assert.match(await words('[data-trial="error"]'), /Line 4.*overload/));
  await press('[data-trial="error"] button');
  await screen.until(async () => {
    const selected = await view.page.$eval(field, (e) => e.value.slice(e.selectionStart, e.selectionEnd));
    assert.equal(selected, '10,overload');
  });
});

test('ten megabytes are refused in words, and the page goes on', async () => {
  const file = join(view.downloads, 'large.txt');
  await writeFile(file, '0,24.5\n'.repeat(1.5e6));
  const picker = await view.page.waitForSelector('.trial input[type=file]');
  const begun = Date.now();
  await picker.uploadFile(file);
  await screen.until(async () => assert.match(await words('[data-trial="error"]'), /10\.5 MB.*at most 1\.0 MB/));
  console.log(`  told after ${Date.now() - begun} ms`);
});

test('a file that is dropped is read, in the encoding it has', async () => {
  const bytes = [...(await readFile(data('trials/19-utf-16.csv')))];
  await view.page.$eval(
    '[data-trial="drop"]',
    (e, b) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([new Uint8Array(b)], 'scale.csv'));
      e.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    bytes,
  );
  await screen.until(async () => assert.match(await words('.trial'), /Read from “scale\.csv”/));
  await screen.until(async () => assert.match(await words('[data-trial="recognised"] dl'), /used/));
  assert.equal(await screen.text('#job-message'), '', 'not taken for a job');
});

for (const which of ['weight', 'recorder', 'cure', 'sorption']) {
  test(`the invented example of ${which} is fitted as the command fits it`, async () => {
    await example(which);
    await screen.until(async () => assert.match(await words('.trial .invented'), /Invented/));
    await fitted();
    const told = fit(demo(), which, data(`invented-trials/${which}.csv`).pathname, which === 'weight' ? ['--area', '200'] : []).fit;
    assert.ok((await words('[data-trial="answer"]')).includes(told.text));
    assert.deepEqual(
      await numbers(),
      told.parameters.map((p) => [p.label, p.value_text, p.interval_text, p.before_text, p.learnt_text]),
    );
    const doubts = await view.page.$$eval('[data-trial="answer"] .doubts li', (all) => all.map((e) => e.textContent.trim()));
    assert.deepEqual(doubts, told.doubts.map((d) => d.text));
    if (told.recorded) assert.ok((await words('[data-trial="answer"]')).includes(told.recorded.route.answer.text));
    console.log(`  ${told.text}`);
  });
}

test('points and curve are saved as a table', async () => {
  await press('.trial figure .opener');
  await view.page.waitForSelector('.trial figure [data-save=csv]');
  await press('.trial figure [data-save=csv]');
  const text = await screen.until(async () => {
    assert.ok((await readdir(view.downloads)).includes('fit-sorption.csv'));
    const found = await readFile(join(view.downloads, 'fit-sorption.csv'), 'utf8');
    assert.ok(found.endsWith('\n'), 'still being written');
    return found;
  });
  assert.match(text, /^\ufeffwhat,series,line,relative humidity,water content \[kg\/kg\],/);
  assert.ok(text.split('\n').filter((l) => l.startsWith('curve,')).length > 20);
});

test('what is wrong with a number of the question stands at its field', async () => {
  await example('weight');
  const area = 'input[name="area_m2"]';
  await screen.fill(area, 'a lot');
  await screen.until(async () => assert.equal(await view.page.$eval(area, (e) => e.getAttribute('aria-invalid')), 'true'));
  await screen.until(async () => assert.equal(await view.page.$eval('[data-trial="fit"]', (e) => e.disabled), true));
  await screen.fill(area, '');
  await press('[data-trial="fit"]'); // the core wants the area, and says so
  await screen.until(async () => assert.match(await words('[data-trial="question"]'), /State the coated area/));
});

test('a fit can be stopped, and typing meanwhile is answered', async () => {
  await example('weight');
  await view.page.evaluate(() => {
    const box = [...document.querySelectorAll('.trial label')].find((l) => /resampling/.test(l.textContent));
    box.querySelector('input').click();
  });
  await press('[data-trial="fit"]');
  await view.page.waitForSelector('[data-fitting]');
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 0.16;
  const wanted = answer(job).routes[0].answer.text;
  await screen.type('film.wet_coat_kg_per_m2', '160');
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), wanted));
  console.log(`  answered ${(await view.page.$('[data-fitting]')) ? 'while it was fitting' : 'after the fit'}`);
  await screen.type('film.wet_coat_kg_per_m2', '155');
  // Unless it has ended by itself meanwhile.
  const stopped = await view.page.$$eval('[data-fitting] button', ([button]) => {
    button?.click();
    return button !== undefined;
  });
  if (stopped) await screen.until(async () => assert.match(await words('.trial .again'), /Stopped/));
  await press('[data-trial="example"]');
});

test('an adopted fit changes the answers and is shown where they rest on it; dropping it brings all back', async () => {
  const job = demo();
  await screen.paste(JSON.stringify(job));
  await screen.settled();
  const before = await screen.until(async () => {
    const [now] = await screen.answers();
    assert.equal(now.sentence, answer(job).routes[0].answer.text);
    return now;
  });
  await kind('sorption');
  await example('weight');
  await fitted();
  await view.page.$eval('[data-trial="adopting"] input', (e) => {
    e.value = 'Card in May';
    e.dispatchEvent(new Event('input', { bubbles: true }));
  });
  await press('[data-trial="adopt"]');
  await screen.until(async () => assert.match(await words('[data-trial="fits"]'), /Card in May/));
  const saved = await screen.saveJob();
  assert.equal(saved.fits.length, 1);
  assert.equal(saved.fits[0].data, 'invented example');
  const result = answer(saved);
  assert.equal(result.rests.length, 2);
  await screen.until(async () => {
    const [now] = await screen.answers();
    assert.equal(now.sentence, result.routes[0].answer.text);
    assert.notEqual(now.sentence, before.sentence);
  });
  await screen.until(async () => {
    for (const rest of result.rests) assert.ok((await words('.rests')).includes(rest.text), rest.text);
  });
  await press('#sec-workshop button');
  await screen.until(async () => assert.match(await words('section[aria-labelledby="sec-workshop"] summary'), /from a trial: Multiplier/));
  await press('section[aria-labelledby="sec-workshop"] summary');
  const mark = `#in-${result.rests.find((r) => r.path.startsWith('workshop')).path.replace(/[^\w]+/g, '-')}-rest`;
  await screen.until(async () => assert.match(await screen.text(mark), /Card in May/));
  assert.equal(await view.page.$('[data-trial="old"]'), null, 'the fit adopted is not old');

  await press('[data-trial="fits"] button');
  await screen.until(async () => assert.equal(await view.page.$('[data-trial="fits"]'), null));
  same(await screen.saveJob(), job);
  await screen.until(async () => {
    const [now] = await screen.answers();
    assert.deepEqual(now, before);
  });
});

test('all of it by keyboard', async () => {
  const { page } = view;
  await page.reload({ waitUntil: 'load' });
  await page.waitForSelector('.trial');
  await page.$eval('.trial', (e) => e.scrollIntoView());
  await page.waitForSelector('input[name="trial-kind"]');
  await screen.still();
  const tab = async (until) => {
    await page.waitForSelector(until);
    for (let n = 0; n < 60; n++) {
      if (await page.evaluate((s) => document.activeElement?.matches(s) ?? false, until)) return;
      await page.keyboard.press('Tab');
    }
    assert.fail(`${until} is not reached`);
  };
  await page.focus('input[name="trial-kind"]');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await tab('[data-trial="example"]');
  await page.keyboard.press('Enter');
  await page.waitForSelector('[data-trial="fit"]');
  await tab('[data-trial="fit"]');
  await page.keyboard.press('Enter');
  await page.waitForSelector('[data-trial="adopt"]', { timeout: longest * 1000 });
  await tab('[data-trial="adopt"]');
  await page.keyboard.press('Enter');
  await page.waitForSelector('[data-trial="fits"]');
  await tab('[data-trial="fits"] button');
  await page.keyboard.press('Enter');
  await screen.until(async () => assert.equal(await page.$('[data-trial="fits"]'), null));
});

for (const theme of ['light', 'dark']) {
  test(`axe finds nothing in trials, ${theme}`, async () => {
    await view.scheme(theme);
    await kind('cure');
    await put(await ugly('13-text-cell.csv'));
    await view.page.waitForSelector('[data-trial="error"]');
    await clean(view.page); // refused
    await example('weight');
    await fitted();
    await press('[data-trial="adopt"]');
    await view.page.waitForSelector('[data-trial="fits"]');
    await view.page.evaluate(() => {
      for (const fold of document.querySelectorAll('.trial details')) fold.open = true;
    });
    await view.page.$eval('.trial figure', (e) => e.scrollIntoView());
    await view.page.waitForSelector('.trial figure svg.plot');
    await clean(view.page); // fitted and adopted
    await press('[data-trial="fits"] button');
    await screen.until(async () => assert.equal(await view.page.$('[data-trial="fits"]'), null));
  });
}

test('nothing scrolls sideways on a telephone', async () => {
  await view.page.setViewport({ width: 390, height: 844 });
  for (const which of ['recorder', 'sorption', 'weight']) {
    await example(which);
    await fitted();
    await screen.still();
    const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    assert.ok(wide <= 0, `${which}: ${wide} px too wide`);
  }
  await clean(view.page);
});

test('all of it without a complaint on the console or a request elsewhere', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
