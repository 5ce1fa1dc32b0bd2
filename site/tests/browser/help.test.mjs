// Help in the built page, in a real browser: the three questions end to end, the words of the trade, the tour by keyboard,
// limits and accuracy, the printed sheet on both papers, what is said aloud to someone who types slowly.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { engine, long, longest, media, only, openPage } from './browser.mjs';
import { answer, demo, example, limit, serve } from './command.mjs';
import { pagesOf } from './paper.mjs';
import { control, Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('[data-ask]');
});

after(async () => {
  await view?.close();
  await server?.stop();
});

const press = (selector) => screen.press(selector);
const pick = (question) => press(`[data-ask] input[value="${question}"]`);
const there = async (selector) => Boolean(await view.page.$(selector));
/** The words of an element without the breaks of its source. */
const words = (selector) =>
  view.page.$eval(selector, (e) => e.textContent.trim().replace(/\s+/g, ' ')).catch(() => '');
const focused = () => view.page.evaluate(() => document.activeElement?.id ?? '');
const asked = (kind) => `[data-asked="${kind}"]`;
const searched = (kind) =>
  screen.until(async () => {
    assert.ok(await there(`${asked(kind)} .body`), `nothing found for ${kind}`);
    assert.equal(await there('[data-progress]'), false, 'still looking');
  }, longest);

async function open(job) {
  await screen.paste(JSON.stringify(job));
  const [route] = answer(job).routes;
  const card = `article[aria-labelledby="answer-${route.kind}"] .sentence`;
  await screen.until(async () => assert.equal(await words(card), route.answer.text));
}

test('the tour is offered, not forced; by keyboard it goes there and back, shows what an input does, and leaves no trace', async () => {
  const job = demo();
  await view.page.waitForSelector('[data-tour-start]');
  assert.equal(await there('.tour'), false);
  const here = () => view.page.$eval('[data-tour="here"]', (e) => e.getAttribute('aria-labelledby') ?? (e.id || e.className || e.tagName));
  const step = () => words('.tour h2');
  const enter = async (selector) => {
    await view.page.waitForSelector(selector);
    await view.page.focus(selector);
    await view.page.keyboard.press('Enter');
  };
  await enter('[data-tour-start]');
  await screen.until(async () => assert.equal(await view.page.evaluate(() => document.activeElement?.tagName), 'H2'));
  const seen = [await step()];
  let changed = '';
  while (await there('[data-tour-next]')) {
    if (await there('[data-tour-change]')) {
      assert.equal(`#${await here()}`, control(coat));
      const before = await screen.value(coat);
      await enter('[data-tour-change]');
      await screen.until(async () => assert.match(await words('.tour dl'), /→/));
      assert.notEqual(await screen.value(coat), before);
      await screen.until(async () => {
        changed = await words('.tour dl');
        assert.match(changed, /Room, overnight ?(\S+ \S+) → (?!\1)/, changed);
      });
    }
    await enter('[data-tour-next]');
    await screen.until(async () => assert.notEqual(await step(), seen.at(-1)));
    seen.push(await step());
    await screen.until(async () => assert.ok(await here()));
  }
  assert.equal(new Set(seen).size, 8, seen.join('; '));
  assert.ok(changed, 'an input was changed on the way');
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await there('.tour'), false));
  assert.equal(await there('[data-tour="here"]'), false);
  await screen.until(async () => assert.equal(await focused(), 'help-menu', 'its opener is gone, the menu has the focus'));
  assert.deepEqual(await screen.saveJob(), job);
  await view.page.reload({ waitUntil: 'load' });
  await view.page.waitForSelector('[data-ask]');
  assert.equal(await there('[data-tour-start]'), false, 'offered once');
  await press('#help-menu');
  await press('[data-help="tour"]');
  await view.page.waitForSelector('.tour');
  await clean(view.page);
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await there('.tour'), false));
});

test('a term is explained where it stands; the focus comes back; all words can be searched', async () => {
  const term = '.sentence [data-term="tack_free"]';
  await view.page.focus(term);
  await view.page.keyboard.press('Enter');
  await screen.until(async () => assert.match(await words('#term-note'), /no longer sticks/));
  await screen.until(async () => assert.equal(await focused(), 'term-note'));
  await clean(view.page);
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await there('#term-note'), false));
  await screen.until(async () => assert.equal(await view.page.evaluate(() => document.activeElement?.dataset.term), 'tack_free'));

  await press('#help-menu');
  await press('[data-help="glossary"]');
  await view.page.waitForSelector('dialog[data-sheet="glossary"]');
  await screen.until(async () => assert.ok((await view.page.$$('[data-entry]')).length >= 45));
  await view.page.type('#term-search', 'dew');
  await screen.until(async () => assert.ok(await there('[data-entry="dew_point"]')));
  await screen.until(async () => assert.ok((await view.page.$$('[data-entry]')).length < 10));
  await clean(view.page);
  await view.page.$eval('dialog', (e) => e.close());
  await screen.until(async () => assert.equal(await there('dialog'), false));
  await screen.until(async () => assert.equal(await focused(), 'help-menu'));
});

test('limits and accuracy show the published numbers of this very build', async () => {
  await press('#help-menu');
  await press('[data-help="accuracy"]');
  await view.page.waitForSelector('#proof-search');
  const said = await words('[data-proof]');
  const [, rows, passed, failed] = /compared with (\d+) .*: (\d+) lie .*, (\d+) do not/.exec(said);
  assert.ok(Number(rows) > 1000, said);
  assert.equal(Number(passed) + Number(failed), Number(rows));
  assert.match(said, /build \d+\.\d+\.\d+-[0-9a-f]{8}/);
  console.log(`  ${said}`);
  await clean(view.page);
  await view.page.type('#proof-search', 'CODATA');
  await screen.until(async () => assert.match(await words('dialog tbody tr:nth-child(2) td:last-child'), /CODATA/));
  await view.page.select('#proof-subject', 'jets');
  await screen.until(async () => assert.match(await words('dialog'), /No row matches/));
  await view.page.$eval('dialog', (e) => e.close());
});

test('"Is overnight enough?": yes or no with the margin at once, then what would help and what must hold', async () => {
  const job = example('shop');
  const route = answer(job).routes.find((r) => r.kind === 'room');
  const wanted = limit(job, 'room', 'spray_later');
  await pick('overnight');
  await press('[data-example]');
  await screen.until(async () => assert.equal(await words('[data-verdict] .first'), `No. The room is ${route.answer.margin_text} too late.`));
  await searched('room');
  const found = await words(asked('room'));
  assert.ok(found.includes(wanted.text), found);
  const best = wanted.levers.find((l) => l.gain > 0);
  assert.ok(found.includes(best.text), `${best.text} in ${found}`);
  for (const label of ['Wet coat', 'relative humidity', 'temperature']) assert.ok(found.includes(label), `${label} in ${found}`);
  await clean(view.page);
  const former = demo().name;
  assert.ok((await words('[data-back]')).includes(former));
  await press('[data-back]');
  await screen.until(async () => assert.equal(await screen.page.$eval('#job-name', (e) => e.value), former));
});

test('"How fast can it go?": whether it carries what sales wants, what stops it, what helps most', async () => {
  const job = example('faster');
  const wanted = limit(job, 'tunnel', 'line_speed', '+20%');
  await open(job);
  await pick('speed');
  await searched('tunnel');
  const found = await words(asked('tunnel'));
  for (const said of [wanted.answer, wanted.text, wanted.levers.find((l) => l.gain > 0).text]) assert.ok(found.includes(said), `${said} in ${found}`);
  const [tightest] = answer(job).routes[0].limits;
  assert.equal(await words('[data-verdict] .first'), wanted.answer, 'what was searched for comes first');
  assert.ok((await words('[data-verdict]')).includes(tightest.text));
  await pick('look');
  assert.equal(await there('[data-verdict]'), false);
});

test('"Which settings?": a recommended setting with its slack, taken with one click; a search can be ended', async () => {
  const job = demo();
  job.tunnel = null;
  await open(job);
  await pick('settings');
  await view.page.waitForSelector(`${asked('static_oven')} [data-progress]`);
  await press(`${asked('static_oven')} [data-progress] button`);
  await screen.until(async () => assert.match(await words(asked('static_oven')), /Stopped/));
  await press(`${asked('static_oven')} .again button`);
  await view.page.waitForSelector('[data-use="asked"]', { timeout: longest * 1000 });
  assert.match(await words(asked('static_oven')), /Recommended.*Slack.*%/);
  await press('[data-use="asked"]');
  await screen.until(async () => assert.match(await words(asked('static_oven')), /inputs/));
  const saved = await screen.saveJob();
  assert.notEqual(saved.static_oven.dwell_s, job.static_oven.dwell_s);
  await pick('look');
});

test('an answer is said aloud once someone who types slowly is done, not between two keys', async () => {
  const aloud = () => words('[data-announcer]');
  const told = (job) => screen.until(async () => assert.ok((await aloud()).includes(answer(job).routes[0].answer.text)));
  await pause(2000); // the first answer of all is read with the page
  await open(example('shop'));
  await told(example('shop'));
  await open(demo());
  await told(demo());
  // By the clock of the page: nothing is said within four seconds of a key, as long as the field is not left.
  await view.page.evaluate(() => {
    const log = (globalThis.heard = { key: -Infinity, left: false, early: [] });
    addEventListener('input', () => (log.key = performance.now()), true);
    addEventListener('focusout', () => (log.left = true), true);
    new MutationObserver(() => {
      const after = performance.now() - log.key;
      if (!log.left && after < 3990) log.early.push(after);
    }).observe(document.querySelector('[data-announcer]'), { childList: true, characterData: true, subtree: true });
  });
  await view.page.focus(control(coat));
  await view.page.keyboard.press('End');
  await view.page.keyboard.press('Backspace');
  await pause(2000); // slower than the answer, which stands by now
  await view.page.keyboard.type('9');
  await pause(2000);
  await view.page.keyboard.press('Tab');
  await screen.until(async () => {
    const said = await aloud();
    assert.match(said, /^New answer\. Room, overnight: /);
    assert.ok(!said.includes(answer(demo()).routes[0].answer.text), 'another coat, another answer');
  });
  assert.deepEqual(await view.page.evaluate(() => globalThis.heard.early), [], 'half a number is no news');
});

const papers = ['A4', 'Letter'];
/** Looks at the page as on paper. */
async function onPaper(look) {
  await view.page.emulateMediaType('print');
  try {
    await view.page.waitForSelector('.sheet svg.plot');
    return await look();
  } finally {
    await view.page.emulateMediaType(); // not 'screen', in which it would then print, too
  }
}

for (const which of ['sleeves', 'shop', 'line', 'faster'])
  test(`the sheet of “${which}” is one page of either paper`, async () => {
    await open(example(which));
    for (const format of papers) assert.equal(pagesOf(Buffer.from(await view.page.pdf({ format }))), 1, format);
    if (engine !== 'chromium') return; // WebDriver BiDi cannot show a page as on paper
    const job = example(which);
    const sheet = await onPaper(async () => {
      // Set no smaller than 6.3 pt, and as large as either paper bears: A4 is the higher one.
      const [letter, a4] = await view.page.$eval('.sheet', (e) => ['--letter', '--a4'].map((n) => Number(e.style.getPropertyValue(n))));
      assert.ok(letter >= 0.84 && a4 >= letter && a4 <= 1.2, `${letter} ${a4}`);
      return words('.sheet');
    });
    assert.doesNotMatch(sheet, /and \d+ more/, 'nothing gives way');
    for (const zone of job.tunnel?.zones ?? []) assert.ok(sheet.includes(zone.name), `${zone.name} in ${sheet}`);
    for (const part of ['Wet coat', 'Fibre length', 'Limit temperature of the part', 'Assumed', 'Cautions', 'Date', 'Signature'])
      assert.ok(sheet.includes(part), `${part} in ${sheet}`);
  });

test('a sheet that is printed before its answer is there says so', only('chromium', media), async () => {
  await open(demo());
  const old = 'older than its settings';
  assert.ok(!(await onPaper(() => words('.sheet'))).includes(old));
  // Typed and printed in one go, before the worker can have answered.
  const printed = await view.page.evaluate((selector) => {
    const field = document.querySelector(selector);
    field.value = '160';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    window.dispatchEvent(new Event('beforeprint'));
    const sheet = document.querySelector('.sheet').textContent;
    window.dispatchEvent(new Event('afterprint'));
    return sheet;
  }, control(coat));
  assert.ok(printed.includes(old), printed);
});

test('the sheet of a job with dangers, numbers from a trial and a long note is one page, and keeps what matters', async () => {
  const job = example('line');
  job.part.limit_temperature_K = 273.15 + 60;
  job.note = 'A long note on the lot, the part and the day. '.repeat(40);
  job.static_oven = demo().static_oven;
  job.room = demo().room;
  await open(job);
  await view.scheme('dark');
  // What stands on the sheet when it goes to the printer, behind the page, which has laid it out by then.
  await view.page.evaluate(() =>
    addEventListener('beforeprint', () => {
      const sheet = document.querySelector('.sheet');
      globalThis.printed = { words: sheet.textContent.trim().replace(/\s+/g, ' '), drawn: sheet.querySelector('svg.plot') !== null };
    }),
  );
  for (const format of papers) assert.equal(pagesOf(Buffer.from(await view.page.pdf({ format }))), 1, format);
  const { words: sheet, drawn } = await screen.until(async () => {
    const found = await view.page.evaluate(() => globalThis.printed);
    assert.ok(found, 'nothing was printed');
    return found;
  });
  assert.ok(drawn, 'with its picture');
  if (engine === 'chromium')
    await onPaper(async () => {
      assert.equal(await view.page.$eval('.sheet', (e) => getComputedStyle(e).color), 'rgb(0, 0, 0)');
      await clean(view.page);
    });
  for (const route of answer(job).routes) {
    assert.ok(sheet.includes(route.answer.text), route.answer.text);
    for (const risk of route.risks.filter((r) => r.severity === 'danger')) assert.ok(sheet.includes(risk.text), risk.text);
  }
  for (const part of ['margin', 'Worst spot', 'Settings', 'Assumed', 'respiratory protection', 'licensed practitioner', 'Signature', 'Printed'])
    assert.ok(sheet.includes(part), `${part} in ${sheet}`);
  assert.match(sheet, /and \d+ more/);
});

test('on paper the ink is black, and nothing is wrong for those who do not see it', only('chromium', media), async () => {
  await view.page.emulateMediaType('print');
  await view.page.waitForSelector('.sheet svg.plot');
  assert.equal(await view.page.$eval('.sheet', (e) => getComputedStyle(e).color), 'rgb(0, 0, 0)');
  await clean(view.page);
  await view.page.emulateMediaType();
});

test('said nothing on the console and asked nothing of anyone else', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
