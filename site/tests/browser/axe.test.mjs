// The page as it stands on the screen and on paper, put before axe-core: its rules for WCAG 2.2 A and AA and its best
// practices find nothing.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { media, only, openPage, telephone } from './browser.mjs';
import { serve } from './command.mjs';
import { complaint, routes, Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
});

after(async () => {
  await view?.close();
  await server?.stop();
});

/** Waits for the answers, and brings every picture near enough to be drawn. */
async function settle() {
  await view.page.waitForSelector('[role=tab]');
  await screen.settled();
  const figures = await view.page.$$('.screen figure');
  for (const figure of figures) {
    await figure.evaluate((e) => e.scrollIntoView());
    await figure.waitForSelector('svg.plot');
  }
  await screen.still();
}

const flawless = () => clean(view.page);

/** Opens every section, every fold and every help text of the form and the detail. */
async function unfold() {
  for (const shut of ['form h3 button[aria-expanded=false]', 'details:not([open]) > summary', 'form .ask[aria-expanded=false]']) {
    await view.page.$$eval(shut, (all) => all.forEach((e) => e.click()));
    await screen.still();
  }
}

for (const theme of ['light', 'dark']) {
  test(`the main screen, ${theme}`, async () => {
    await view.scheme(theme);
    await settle();
    await flawless();
  });

  test(`the detail of every route, ${theme}`, async () => {
    for (const kind of routes) {
      await screen.press(`#tab-${kind}`);
      await settle();
      await flawless();
    }
  });

  test(`a bad input and old answers, ${theme}`, async () => {
    const typed = await screen.value(coat);
    await screen.type(coat, '5');
    await screen.until(async () => assert.ok(await screen.visible(complaint(coat))));
    await flawless();
    await screen.type(coat, typed);
    await settle();
  });
}

test('everything unfolded', async () => {
  await view.scheme('light');
  await unfold();
  await flawless();
});

test('on paper', only('chromium', media), async () => {
  await view.page.emulateMediaType('print');
  await view.page.waitForSelector('.sheet svg.plot');
  await flawless();
  await view.page.emulateMediaType();
});

test('on a telephone', async () => {
  await view.page.setViewport(telephone(390)); // loads the page anew
  await settle();
  await flawless();
});

test('at 400 % on a small screen', async () => {
  await view.page.setViewport({ width: 360, height: 225 });
  await settle();
  await flawless();
});
