// Planning in the built page, in a real browser: one click answers the questions of the shop in the words of the command;
// a search can be ended, is no burden to typing, and gives a map that a setting can be taken from.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { long, longest, only, openPage } from './browser.mjs';
import { answer, demo, example, limit, serve } from './command.mjs';
import { Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('.plan');
});

after(async () => {
  await view?.close();
  await server?.stop();
});

const press = (selector) => screen.press(selector);
const ask = (name) => press(`[data-question="${name}"]`);
const running = () => view.page.$('[data-progress]').then(Boolean);
const judged = () => screen.text('[data-progress] p span').then((words) => Number.parseInt(words, 10));

async function open(job) {
  await screen.paste(JSON.stringify(job));
  const [route] = answer(job).routes;
  const card = `article[aria-labelledby="answer-${route.kind}"] .sentence`;
  await screen.until(async () => assert.equal(await screen.text(card), route.answer.text));
}

async function choose(kind) {
  const radio = `input[name="plan-route"][value="${kind}"]`;
  await view.page.$$eval(radio, (found) => found[0]?.click());
}

/** Waits until a search has ended and stands. */
const ends = () =>
  screen.until(async () => {
    assert.equal(await running(), false, 'still looking');
    assert.ok(await view.page.$('.plan [data-limit], .plan [data-window]'), 'no answer');
  }, longest);

/** The sentences of the plan, its levers last, as they stand. */
const said = () =>
  view.page.evaluate(() => {
    const words = (e) => e.textContent.trim().replace(/\s+/g, ' ');
    const plan = document.querySelector('.plan .answer');
    return { lines: [...plan.querySelectorAll(':scope > p')].map(words), levers: [...plan.querySelectorAll('ol li')].map(words) };
  });

test('"Sales wants 20 % more" is answered in one click, in the words of the command', async () => {
  const job = example('faster');
  const wanted = limit(job, 'tunnel', 'line_speed', '+20%');
  await open(job);
  await ask('more');
  await ends();
  const { lines, levers } = await said();
  assert.deepEqual(lines, [wanted.answer, wanted.text]);
  assert.ok(levers.length > 3);
  assert.deepEqual(
    levers,
    wanted.levers.map((l) => l.text),
  );
  assert.match(wanted.answer, /\d/);
  console.log(`  ${lines.join(' ')}`);
});

for (const which of ['shop', 'the demo']) {
  test(`"Can we pack by the deadline" is answered in one click, ${which}`, async () => {
    const job = which === 'the demo' ? demo() : example(which);
    const wanted = limit(job, 'room', 'spray_later');
    const route = answer(job).routes.find((r) => r.kind === 'room');
    await open(job);
    await choose('room');
    await ask('late');
    await ends();
    const { lines, levers } = await said();
    assert.deepEqual(lines, [route.answer.text, wanted.text]);
    assert.deepEqual(
      levers,
      wanted.levers.map((l) => l.text),
    );
    console.log(`  ${lines.join(' ')}`);
  });
}

test('a wanted change that is no number is told at its field and not asked', async () => {
  await open(example('faster'));
  const field = '.plan .more input';
  await screen.fill(field, 'much');
  await screen.until(async () => assert.ok(await screen.visible('#percent-wrong')));
  await view.page.$eval('[data-question="more"]', (e) => e.click());
  await screen.still();
  assert.equal(await running(), false);
  await screen.fill(field, '12,5');
  await screen.until(async () => assert.match(await screen.text('[data-question="more"]'), /12,5 %/));
});

test('a search says how far it is, and ends within a fifth of a second', async () => {
  await ask('fast');
  await screen.until(async () => assert.ok((await judged()) > 0, 'nothing judged yet'), longest);
  const took = () =>
    view.page.evaluate(async () => {
      const begun = performance.now();
      document.querySelector('[data-progress] button').click();
      while (document.querySelector('[data-progress]')) await new Promise((resolve) => requestAnimationFrame(resolve));
      return performance.now() - begun;
    });
  // Others may hold the machine up: the best of a few counts.
  const times = [await took()];
  while (times.at(-1) >= 200 && times.length < 5) {
    await ask('fast');
    await screen.until(async () => assert.ok((await judged()) > 0, 'nothing judged yet'), longest);
    times.push(await took());
  }
  console.log(`  gone from the page after ${times.map((ms) => ms.toFixed(0)).join(', ')} ms`);
  assert.ok(times.at(-1) < 200, `${times.join(', ')} ms`);
  await screen.until(async () => assert.ok(view.page.workers().length <= 2, 'workers are still there'));
  await screen.until(async () => assert.match(await screen.text('.plan .again'), /Stopped/));
});

test('typing during a search is answered; the plan is then old, and asked again on a click', only('chromium', long), async () => {
  const job = example('faster');
  await ask('fast');
  await screen.until(async () => assert.ok((await judged()) > 0, 'nothing judged yet'), longest);
  const typed = await screen.value(coat);
  const more = String(Number(typed) + 1);
  job.film.wet_coat_kg_per_m2 = Number(more) / 1000;
  const { text } = answer(job).routes[0].answer;
  const begun = Date.now();
  await screen.type(coat, more);
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), text));
  console.log(`  answered ${Date.now() - begun} ms after the typing began, ${(await running()) ? 'while it was looking' : 'after it had ended'}`);
  await ends();
  await screen.until(async () => assert.ok(await view.page.$('.plan [data-old]'), 'not called old'));
  await screen.type(coat, typed);
  await screen.until(async () => assert.equal(await view.page.$('.plan [data-old]'), null));
});

test('the map of good settings fills in, is read by keyboard, and gives the job a setting', async () => {
  const job = demo();
  await open(job);
  await choose('static_oven');
  await view.page.evaluate(() => {
    globalThis.seen = { begun: performance.now() };
    new MutationObserver(() => {
      const now = performance.now() - globalThis.seen.begun;
      if (document.querySelector('.plan .window svg.plot')) globalThis.seen.first ??= now;
      if (document.querySelector('.plan [data-window]')) globalThis.seen.whole ??= now;
    }).observe(document.querySelector('.plan'), { childList: true, subtree: true });
  });
  await ask('window');
  await ends();
  const { first, whole } = await view.page.evaluate(() => globalThis.seen);
  console.log(`  first picture after ${first.toFixed(0)} ms, whole after ${whole.toFixed(0)} ms`);

  const slider = '.plan .window [role=slider]';
  await view.page.waitForSelector(slider);
  const value = () => view.page.$eval(slider, (e) => e.getAttribute('aria-valuetext'));
  await screen.still();
  const before = await value();
  await view.page.focus(slider);
  await view.page.keyboard.press('End');
  await screen.until(async () => assert.notEqual(await value(), before));
  assert.match(await value(), /^(Good|\d )/);

  const offered = await screen.text('[data-use="robust"]');
  await press('[data-use="robust"]');
  await screen.until(async () => assert.match(await screen.text('.plan .use [role=status]'), /inputs/));
  const saved = await screen.saveJob();
  assert.notEqual(saved.static_oven.dwell_s, job.static_oven.dwell_s);
  assert.match(offered, new RegExp(String(Number((saved.static_oven.dwell_s / 60).toPrecision(4)))));
  assert.deepEqual({ ...saved, static_oven: null }, { ...job, static_oven: null });
  await screen.undo();
  assert.deepEqual(await screen.saveJob(), job);
});

test('no task of the page takes longer than 50 ms of its thread while a map is drawn', only('chromium', 'Firefox does not tell of long tasks'), async () => {
  await view.page.tracing.start({ categories: ['toplevel', '__metadata'] });
  await ask('window');
  await ends();
  const { traceEvents } = JSON.parse(new TextDecoder().decode(await view.page.tracing.stop()));
  const main = new Set(
    traceEvents.filter((e) => e.name === 'thread_name' && e.args.name === 'CrRendererMain').map((e) => `${e.pid}/${e.tid}`),
  );
  // Time of the thread, not of the wall, since others may hold the machine up.
  const tasks = traceEvents.filter((e) => main.has(`${e.pid}/${e.tid}`) && e.tdur !== undefined).map((e) => e.tdur / 1000);
  const longest = Math.max(...tasks);
  console.log(`  ${tasks.length} tasks, the longest ${longest.toFixed(0)} ms`);
  assert.ok(tasks.length > 100, 'the trace shows the tasks');
  assert.ok(longest < 50, `${longest} ms`);
});

test('every limit stands in one table', only('chromium', long), async () => {
  await ask('limits');
  await ends();
  const rows = await view.page.$$eval('[aria-labelledby="plan-limits"] tbody tr', (all) => all.map((r) => r.cells.length));
  assert.ok(rows.length >= 5 && rows.every((cells) => cells === 4), String(rows));
});

test('a route that must hold more has another limit', async () => {
  await ask('short');
  await ends();
  const { lines } = await said();
  await press('.plan .goal summary');
  const cured = await view.page.evaluateHandle(() =>
    [...document.querySelectorAll('.plan .goal label')].find((l) => l.textContent.trim() === 'cured').querySelector('input'),
  );
  const was = await cured.evaluate((e) => {
    const before = e.checked;
    e.click();
    return before;
  });
  await screen.until(async () => assert.ok(await view.page.$('.plan [data-old]'), 'not called old'));
  await ask('short');
  await ends();
  assert.notDeepEqual((await said()).lines, lines, `cured was ${was ? '' : 'not '}asked for before`);
});

test('how sure it is, and what a day costs, in words with numbers', only('chromium', long), async () => {
  await ask('spread');
  await screen.until(async () => assert.match(await screen.text('.plan [data-spread]'), /\d+ %.*cases|samples/), longest);
  await ask('costs');
  await screen.until(async () => assert.match(await screen.text('.plan [data-costs]'), /m² a day/), longest);
});

test('what varies can be stated: the answer is of what was stated, and a width that is none is told at its place', only('chromium', long), async () => {
  const section = '[aria-labelledby="plan-spread"]';
  await press(`${section} details summary`);
  await view.page.waitForSelector(`${section} [data-varied="coat"] .number`);
  const width = `${section} [data-varied="coat"] .number`;
  const put = (typed) => screen.fill(width, typed);
  await put('much');
  await screen.until(async () => assert.match(await screen.text(`${section} [data-varied="coat"] p`), /above zero/));
  await screen.until(async () => assert.equal(await view.page.$eval('[data-question="spread"]', (e) => e.disabled), true));
  await put('12,5');
  await ask('spread');
  await screen.until(async () => assert.match(await screen.text(section), /Wet coat, ± 12\.5 %/), longest);
  await screen.until(async () => assert.equal(await running(), false), longest);
});

test('the settings that take least stay inside their bounds', only('chromium', long), async () => {
  const optimum = '[aria-labelledby="plan-optimum"]';
  await view.page.$$eval(`${optimum} .bounds input[type=checkbox]`, (all) => {
    for (const [i, box] of all.entries()) if (box.checked !== (i === 0)) box.click(); // the set-point alone
  });
  const [low, high] = await view.page.$$(`${optimum} .bounds .input`);
  await low.type('90');
  await screen.until(async () => assert.equal(await view.page.$eval(`${optimum} .button`, (e) => e.disabled), true));
  await high.type('120');
  await ask('optimum');
  await screen.until(async () => assert.match(await screen.text('.plan [data-optimum]'), /\d/), longest);
  const set = Number.parseFloat((await screen.text('.plan [data-optimum] li')).match(/[\d.]+/)[0]);
  assert.ok(set >= 90 && set <= 120, `${set} °C`);
});

for (const theme of ['light', 'dark']) {
  test(`axe finds nothing in plans, ${theme}`, async () => {
    await view.scheme(theme);
    await clean(view.page); // limits, the map and the table, one of them old
    await ask('cool');
    await clean(view.page); // looking
    await ends();
    await view.page.evaluate(() => {
      for (const fold of document.querySelectorAll('.plan details')) fold.open = true;
    });
    await clean(view.page);
  });
}

test('nothing scrolls sideways on a telephone', async () => {
  await view.page.setViewport({ width: 390, height: 844 });
  await screen.still(); // pictures are drawn anew
  const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  assert.ok(wide <= 0, `${wide} px too wide`);
  await clean(view.page);
});

test('all of it without a complaint on the console or a request elsewhere', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
