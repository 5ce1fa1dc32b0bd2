// The built page in a real browser, against the command. Both run the same core; what the page prints must be what the
// command prints for the same job, to the last digit.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and CHROMIUM (the browser).
//
// What the test holds on to in the page:
//   [data-route="room"]            the answer card of a route; data-stale="true" while it is not the answer to the inputs
//   [data-route=…] [data-mark=…]   the cell that holds the printed time of a mark
//   [data-answer]                  within a card, the route's sentence
//   #<path>                        the input of a field, its id being the path in the job (film.wet_coat_kg_per_m2)
//   #<path>-error                  what is wrong with it
//   #fault-summary                 all that is wrong, in one list
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { openPage } from './browser.mjs';
import { answer, demo, refuse, serve } from './command.mjs';

const coat = 'film.wet_coat_kg_per_m2';
const byId = (id) => `[id="${id}"]`;

let server, view;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
});

after(async () => {
  await view?.close();
  await server?.stop();
});

/** Every mark's printed time and every sentence, as they stand on the page. */
const shown = () =>
  view.page.$$eval('[data-route]', (cards) =>
    cards.map((card) => ({
      kind: card.dataset.route,
      stale: card.dataset.stale === 'true',
      text: card.querySelector('[data-answer]')?.textContent?.trim() ?? '',
      marks: Object.fromEntries(
        [...card.querySelectorAll('[data-mark]')].map((cell) => [cell.dataset.mark, cell.textContent.trim()]),
      ),
    })),
  );

/** The same, as the command gives it. */
const expected = (job) =>
  answer(job).routes.map((route) => ({
    kind: route.kind,
    stale: false,
    text: route.answer.text,
    marks: Object.fromEntries(route.marks.map((mark) => [mark.name, mark.text])),
  }));

/** Waits until the page shows what is wanted; the last comparison tells what differs. */
async function settlesOn(wanted) {
  const end = Date.now() + 60_000;
  for (;;) {
    const now = await shown();
    try {
      assert.deepEqual(now, wanted);
      return;
    } catch (difference) {
      if (Date.now() > end) throw difference;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}

async function type(path, text) {
  await view.page.click(byId(path), { count: 3 });
  await view.page.keyboard.press('Backspace');
  await view.page.keyboard.type(text);
  await view.page.keyboard.press('Tab');
}

const textOf = (selector) => view.page.$eval(selector, (e) => e.textContent.trim()).catch(() => '');
const visible = (selector) =>
  view.page.$eval(selector, (e) => e.checkVisibility() && e.textContent.trim() !== '').catch(() => false);

test('opens on the demo job, with the answers that the command gives', async () => {
  const wanted = expected(demo());
  assert.deepEqual(
    wanted.map((route) => route.kind),
    ['room', 'static_oven', 'tunnel'],
  );
  await settlesOn(wanted);
});

test('an edited input changes the answers to those of the command for the edited job', async () => {
  const job = demo();
  const before = expected(job);
  const typed = Number(await view.page.$eval(byId(coat), (e) => e.value));
  const factor = typed / job.film.wet_coat_kg_per_m2; // the page shows g/m² or oz/ft²; the job holds kg/m²
  const more = Math.round(typed * 1.2 * 10) / 10;
  job.film.wet_coat_kg_per_m2 = more / factor;
  const wanted = expected(job);
  assert.notDeepEqual(wanted, before, 'the edit must matter, or the test shows nothing');
  await type(coat, String(more));
  await settlesOn(wanted);
});

test('a bad input is refused at its field and in the list; the last good answer stays, marked as old', async () => {
  const good = await shown();
  const typed = await view.page.$eval(byId(coat), (e) => e.value);
  await type(coat, '-5');
  await view.page.waitForFunction((id) => document.getElementById(id)?.textContent.trim(), {}, `${coat}-error`);
  assert.ok(await visible(byId(`${coat}-error`)), 'the error at the field is to be seen');
  assert.ok(await visible('#fault-summary'), 'the list of errors is to be seen');
  assert.match(await textOf(byId(`${coat}-error`)), /\d/, 'the error says what is accepted');
  assert.equal(await view.page.$eval(byId(coat), (e) => e.getAttribute('aria-invalid')), 'true');
  assert.deepEqual(
    await shown(),
    good.map((card) => ({ ...card, stale: true })),
  );
  // The command refuses the same job, naming the same field.
  const job = demo();
  job.film.wet_coat_kg_per_m2 = -0.005;
  assert.match(refuse(job), new RegExp(`^${coat.replaceAll('.', '\\.')}: `));

  await type(coat, typed);
  await settlesOn(good);
  assert.equal(await visible(byId(`${coat}-error`)), false, 'the error is gone once it is put right');
  assert.equal(await visible('#fault-summary'), false);
});

test('nothing scrolls sideways on a telephone', async () => {
  for (const width of [390, 360]) {
    await view.page.setViewport({ width, height: 844, isMobile: true, hasTouch: true });
    await new Promise((resolve) => setTimeout(resolve, 300));
    const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    assert.ok(wide <= 0, `${wide} px too wide at ${width} px`);
  }
});

test('said nothing on the console and asked nothing of anyone else', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
