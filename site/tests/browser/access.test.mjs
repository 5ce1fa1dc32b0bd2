// The page for whoever uses no mouse, a small or a huge window, another zoom, no motion or colours of their own.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, afterEach, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { longest, openPage } from './browser.mjs';
import { demo, example, expected, limit, serve } from './command.mjs';
import { complaint, control, routes, Screen, summary } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';
let server, view, screen;

before(async () => (server = await serve()));
after(() => server?.stop());
afterEach(async () => {
  await view?.close();
  view = undefined;
});

async function open(options) {
  view = await openPage(server.address, options);
  screen = new Screen(view.page, view.downloads);
  await ready();
}

/** Waits until all of the page is there. */
async function ready() {
  await view.page.waitForSelector('.plan');
  await view.page.waitForSelector('.trial');
  await screen.still();
}


async function reload() {
  await view.page.reload({ waitUntil: 'load' });
  await ready();
}

/** Presses a key so many times. */
async function press(key, times = 1) {
  for (let n = 0; n < times; n++) await view.page.keyboard.press(key);
}

const reached = (selector, why) => screen.until(async () => assert.ok(await focused(selector), why ?? selector));
const focused = (selector) => view.page.evaluate((s) => document.activeElement?.matches(s) ?? false, selector);

/** Tabs on until an element has the focus. */
async function tabTo(selector, most = 250) {
  for (let n = 0; n < most; n++) {
    if (await focused(selector)) return;
    await press('Tab');
  }
  assert.fail(`${selector} is not reached by ${most} tabs`);
}

/**
 * What has the focus: a name for it, whether it can be seen at all, whether a ring or the like shows that it has the focus,
 * and whether something else lies over it. Inputs that are drawn by their label count by their label.
 */
const standing = () =>
  view.page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body || at === document.documentElement) return null;
    const label = at.matches('input.sr-only, input[type=radio], input[type=checkbox]') ? at.closest('label') : null;
    const drawn = label ?? at;
    const box = drawn.getBoundingClientRect();
    const shown = (e) => {
      const style = getComputedStyle(e);
      return (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 1) || style.boxShadow !== 'none';
    };
    const points = [0.5, 0.1, 0.9].flatMap((x) => [0.5, 0.2, 0.8].map((y) => [box.left + x * box.width, box.top + y * box.height]));
    const seen = points.some(([x, y]) => {
      const hit = document.elementFromPoint(x, y);
      return hit && (drawn.contains(hit) || hit.contains(drawn));
    });
    return {
      name: `${at.tagName.toLowerCase()}#${at.id || '?'} ${(at.getAttribute('aria-label') ?? at.textContent ?? '').trim().slice(0, 40)}`,
      visible: drawn.checkVisibility() && box.width > 0 && box.height > 0,
      ring: shown(at) || shown(drawn) || [...drawn.querySelectorAll('*')].some(shown),
      seen,
      first: at.dataset.firstStop !== undefined,
    };
  });

test('every stop of the tab key can be seen, shows that it has the focus, and leads on to the end', async () => {
  await open({ width: 1440, height: 900 });
  await screen.settled();
  const stops = [];
  const right = (s) => s.visible && s.ring && s.seen;
  for (let n = 0; n < 400; n++) {
    await press('Tab');
    let stop = await standing();
    // Beyond the last stop the focus leaves the page, or begins anew.
    if (!stop || stop.first) break;
    if (n === 0) await view.page.evaluate(() => (document.activeElement.dataset.firstStop = ''));
    // What came into view with it, a picture say, may be drawn first and move it.
    if (!right(stop)) {
      await screen.still();
      stop = await standing();
    }
    stops.push(stop);
  }
  assert.ok(stops.length > 40 && stops.length < 400, `${stops.length} stops`);
  const wrong = stops.filter((s) => !right(s));
  assert.deepEqual(wrong, []);
  console.log(`  ${stops.length} stops`);
});

test('the whole demo by keyboard alone', async () => {
  await open();
  const { page } = view;

  // Straight to the answers, straight to the inputs.
  await screen.settled();
  await press('Tab');
  await reached('a.skip[href="#answers"]');
  await screen.until(async () => assert.ok((await standing()).seen, 'the link shows itself'));
  await press('Enter');
  await reached('#answers');
  await reload();
  await press('Tab', 2);
  await reached('a.skip[href="#inputs"]');
  await press('Enter');

  // An input is changed, spoilt and mended.
  await tabTo(control(coat));
  const typed = await screen.value(coat);
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 0.18;
  await page.keyboard.type('180');
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), expected(job)[0].sentence));
  await press('Tab');
  await page.keyboard.down('Shift');
  await press('Tab');
  await page.keyboard.up('Shift');
  await reached(control(coat));
  await page.keyboard.type('thick');
  await screen.until(async () => assert.ok(await screen.visible(complaint(coat))));
  await reload();
  await page.waitForSelector(`${summary} a`);
  await tabTo(`${summary} a`);
  await press('Enter');
  await reached(control(coat));
  await page.keyboard.down('Control');
  await press('a');
  await page.keyboard.up('Control');
  await page.keyboard.type(typed);
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), expected(demo())[0].sentence));

  // The settings, opened and closed again.
  await reload();
  await tabTo('#settings');
  await press('Enter');
  await page.waitForSelector('#settings-panel');
  await reached('#settings-panel input');
  await press('Escape');
  await screen.until(async () => assert.equal(await page.$('#settings-panel'), null));
  await reached('#settings', 'back where they were opened');

  // A worked example as a new job, and the menu closed without one.
  await reload();
  await tabTo('[data-new]');
  await press('Enter');
  await page.waitForSelector('#new-jobs');
  await press('Escape');
  await screen.until(async () => assert.equal(await page.$('#new-jobs'), null));
  await reached('[data-new]', 'back where the menu was opened');
  await press('Enter');
  await page.waitForSelector('#new-jobs ul + p + ul button');
  await tabTo('#new-jobs ul + p + ul button', 4);
  await press('Tab');
  await press('Enter');
  await reached('[data-new]');
  const shown = await screen.until(async () => {
    const sentence = await screen.text('article .sentence');
    assert.notEqual(sentence, expected(demo())[0].sentence);
    return sentence;
  });
  assert.ok(['shop', 'line', 'faster'].some((which) => expected(example(which))[0].sentence === shown));
  await screen.paste(JSON.stringify(demo()));
  await screen.until(async () => assert.equal(await screen.text('article .sentence'), expected(demo())[0].sentence));

  // A question about the room.
  const told = limit(demo(), 'room', 'spray_later');
  await tabTo('input[name="plan-route"]');
  for (let n = 0; n < 3 && !(await focused('input[name="plan-route"][value="room"]')); n++) await press('ArrowLeft');
  await tabTo('[data-question="late"]');
  await press('Enter');
  await screen.until(async () => assert.ok((await screen.text('.plan .answer')).includes(told.text)), longest);
  assert.ok(await standing(), 'the focus is not lost by the answer');

  // The routes in detail.
  await tabTo('[role=tab]');
  const seen = new Set();
  for (let n = 0; n < routes.length; n++) {
    await reached('[role=tab][aria-selected=true]');
    const id = await page.evaluate(() => document.activeElement.id);
    seen.add(id);
    await press('ArrowRight');
    await reached(`[role=tab]:not(#${id})`);
  }
  assert.deepEqual(seen, new Set(routes.map((kind) => `tab-${kind}`)));
});

test('no window scrolls sideways, from 320 px, which is 1280 px at 400 %, to 2560 px', async () => {
  await open();
  for (const [width, height] of [
    [320, 256],
    [360, 800],
    [390, 844],
    [768, 1024],
    [1024, 768],
    [1440, 900],
    [2560, 1440],
  ]) {
    await view.page.setViewport({ width, height });
    await view.page.waitForSelector('[role=tab]');
    for (const kind of routes) {
      await screen.press(`#tab-${kind}`);
      await screen.still(); // pictures are drawn anew
      const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(wide <= 0, `${wide} px too wide at ${width} px, ${kind}`);
    }
  }
});

test('nothing moves for whoever asks for no motion', async () => {
  await open({ wish: 'still' });
  assert.ok(await view.page.evaluate(() => matchMedia('(prefers-reduced-motion: reduce)').matches));
  await view.page.evaluate(() => scrollTo(0, 0));
  const moved = await view.page.evaluate(async () => {
    document.querySelector('article button').click();
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => resolve(scrollY)));
    const places = [];
    for (let n = 0; n < 30; n++) places.push(await frame());
    return {
      steps: new Set(places).size,
      running: document.getAnimations().filter((a) => a.playState === 'running' && a.effect.getComputedTiming().duration > 1).length,
    };
  });
  assert.ok(moved.steps <= 2, `scrolled in ${moved.steps} steps`);
  assert.equal(moved.running, 0);
});

test('with colours of the system everything can still be told apart', async () => {
  await open({ wish: 'forced' });
  assert.ok(await view.page.evaluate(() => matchMedia('(forced-colors: active)').matches));
  const told = await view.page.evaluate(() => {
    const looks = (e) => {
      const { color, backgroundColor, borderColor, borderBottomWidth, outlineStyle, fontWeight } = getComputedStyle(e);
      return [color, backgroundColor, borderColor, borderBottomWidth, outlineStyle, fontWeight].join(' ');
    };
    const pairs = {
      tab: ['[role=tab][aria-selected=true]', '[role=tab][aria-selected=false]'],
      // Choices that are drawn by their labels.
      choice: ['label:has(> input.sr-only:checked)', 'label:has(> input.sr-only:not(:checked))'],
    };
    const alike = Object.entries(pairs)
      .filter(([, pair]) => {
        const [a, b] = pair.map((selector) => document.querySelector(selector));
        return a && b && looks(a) === looks(b);
      })
      .map(([name]) => name);
    const edgeless = [...document.querySelectorAll('button.button:not(.quiet)')]
      .filter((b) => b.checkVisibility() && getComputedStyle(b).borderTopWidth === '0px')
      .map((b) => b.textContent.trim());
    return { alike, edgeless };
  });
  assert.deepEqual(told, { alike: [], edgeless: [] });
  await clean(view.page, ['color-contrast']); // the colours are the system's
});
