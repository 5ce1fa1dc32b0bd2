// Inputs in the built page, in a real browser: units typed into fields, helpers to numbers that people lack, and what is told when
// a field is wrong.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { openPage, telephone } from './browser.mjs';
import { answer, demo, serve } from './command.mjs';
import { complaint, control, Screen, summary } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';
const fibre = 'pile.length_m';
const thickness = 'part.thickness_m';
const solids = 'film.adhesive.solids_fraction';

let server, view, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('.trial'); // the last part to be loaded: the table of units is there by then
  await screen.settled();
});

after(async () => {
  await view?.close();
  await server?.stop();
});

const words = (selector) => view.page.$eval(selector, (e) => e.textContent.trim().replace(/\s+/g, ' '));

/** Opens a section of the form, where it is closed. */
async function open(section) {
  const selector = `#sec-${section} button`;
  await view.page.waitForSelector(selector);
  await view.page.$eval(selector, (e) => e.getAttribute('aria-expanded') === 'true' || e.click());
}

/** Types into a field and stays there. */
async function typing(path, text) {
  await view.page.waitForSelector(control(path));
  await screen.fill(control(path), text);
}

/** What the field says of a text in another unit. */
const meaning = (path) => screen.text(`${control(path)}-meaning`);

for (const [section, path, text, said, settled, si] of [
  // 4.4 oz/yd² at 33.90575 g/m² to an ounce for a square yard (NIST SP 811); the rest follows from 25.4 mm to an inch.
  ['film', coat, '4.4 oz/yd2', '= 149.185289 g/m²', '149.185289', 0.1491853],
  ['film', coat, '0,16 kg/m²', '= 160 g/m²', '160', 0.16],
  ['pile', fibre, '30 mil', '= 0.762 mm', '0.762', 0.762e-3],
  ['part', thickness, '1/16 in', '= 1.5875 mm', '1.5875', 1.5875e-3],
  ['static_oven', 'static_oven.set_point_K', '250 F', '= 121.111111 °C', '121.111111', 394.26111],
  ['static_oven', 'static_oven.dwell_s', '1 h 10 min', '= 70 min', '70', 4200],
]) {
  test(`“${text}” is understood, explained while it stands there, and becomes the unit of the field`, async () => {
    await open(section);
    const before = await view.page.$eval(control(path), (e) => e.value).catch(() => '');
    await typing(path, text);
    await screen.until(async () => assert.equal((await meaning(path)).replace(/\s/g, ' '), said));
    assert.equal(await screen.value(path), text, 'what was typed stands there while it is typed');
    // What the core thought of the first letters of it may still be on its way.
    await screen.until(async () => assert.equal(await view.page.$eval(control(path), (e) => e.getAttribute('aria-invalid')), null));
    await view.page.keyboard.press('Tab');
    await screen.until(async () => assert.equal(await screen.value(path), settled));
    await screen.until(async () => assert.equal(await meaning(path), ''));
    const saved = await screen.saveJob();
    const value = path.split('.').reduce((node, name) => node[name], saved);
    assert.ok(Math.abs(value / si - 1) < 1e-6, `${value}, want ${si}`);
    if (before) await screen.type(path, before);
    await screen.settled();
  });
}

test('an answer to a foreign unit is the answer to the number it means', async () => {
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 0.16;
  const wanted = answer(job);
  await screen.paste(JSON.stringify(demo()));
  await screen.settled();
  await open('film');
  await screen.type(coat, '0.16 kg/m2');
  await screen.until(async () => {
    const [now] = await screen.answers();
    assert.equal(now.sentence, wanted.routes[0].answer.text);
  });
});

test('the help at a field lists what may be typed', async () => {
  await open('film');
  const button = await view.page.waitForSelector(`.field:has(${control(coat)}) .ask`);
  await button.click();
  await screen.until(async () => assert.match(await words(`${control(coat)}-help`), /Units understood.*g\/m².*oz\/yd²/));
  await button.click();
});

for (const [kind, text, said] of [
  ['no number', 'a lot', /must be a number/],
  ['nothing', '', /needs a number/],
  ['a unit of something else', '4 mil', /unit does not fit/],
  ['a unit that nobody knows', '4 furlong', /unit does not fit/],
  ['two readings', '1,200', /two ways/],
  ['out of range', '5000', /must be between 20 and 1000/],
]) {
  test(`${kind} is told at the field and in the one list; the last good answer stays, marked as old`, async () => {
    await open('film');
    await screen.type(coat, '150');
    await screen.settled();
    await screen.until(async () => assert.equal(await screen.old(), false));
    const [good] = await screen.answers();
    await screen.type(coat, text);
    await screen.until(async () => {
      assert.match(await words(complaint(coat)), said);
      assert.match(await words(summary), /One input needs a look/);
      assert.match(await words(summary), said);
      assert.equal(await view.page.$eval(control(coat), (e) => e.getAttribute('aria-invalid')), 'true');
    });
    await screen.until(async () => assert.equal(await screen.old(), true));
    const [kept] = await screen.answers();
    assert.deepEqual(kept, good);
    assert.equal(await screen.value(coat), text, 'what was typed stays');
    // The list leads to the field.
    await screen.press(`${summary} a`);
    await screen.until(async () => assert.equal(await view.page.evaluate(() => document.activeElement.id), control(coat).slice(1)));
    await screen.type(coat, '150');
    await screen.until(async () => assert.equal(await view.page.$(summary), null));
    await screen.settled();
  });
}

test('two fields that contradict each other are told by the core', async () => {
  await open('film');
  await screen.type(coat, 'much');
  await screen.type(solids, '90');
  await screen.until(async () => assert.match(await words(summary), /2 inputs need a look/));
  await screen.type(coat, '150');
  await screen.type(solids, '50');
  await screen.until(async () => assert.equal(await view.page.$(summary), null));
  await screen.settled();
});

/** Opens the helper of a field and chooses one of its kinds. */
async function lack(path, kind) {
  await screen.press(`[data-lack="${path}"]`);
  await view.page.waitForSelector('[data-helper]');
  if (await view.page.$('[data-helper-choice]')) await view.page.select('[data-helper-choice]', kind);
  await view.page.waitForSelector(`[data-helper="${kind}"]`);
}

async function fill(name, text) {
  const field = `[data-helper] input[name="${name}"]`;
  await view.page.waitForSelector(field);
  await screen.fill(field, text);
}

const result = (wanted) => screen.until(async () => assert.match(await words('[data-helper] .result'), wanted));
const use = () => screen.press('[data-helper-use]');

test('a coat weight from a wet-film comb, with the solids of the job', async () => {
  await open('film');
  await lack(coat, 'comb');
  await screen.until(async () => assert.match(await words('[data-helper] .row:nth-of-type(2)'), /from the job/));
  await fill('wet_thickness_m', '6 mil');
  await result(/15\d(\.\d+)? g\/m²/);
  await screen.until(async () => assert.match(await words('[data-helper] dl'), /ρ = 1 \/.*t = 152\.4 µm.*ISO 2808/));
  await use();
  await screen.until(async () => assert.equal(await view.page.$('[data-helper]'), null));
  await screen.until(async () => {
    assert.equal(await view.page.evaluate(() => document.activeElement.id), control(coat).slice(1));
    assert.match(await screen.value(coat), /^15\d(\.\d+)?$/);
  });
  await screen.settled();
});

test('what was typed into a helper is remembered', async () => {
  await lack(coat, 'comb');
  await screen.until(async () => assert.equal(await view.page.$eval('[data-helper] input[name="wet_thickness_m"]', (e) => e.value), '6 mil'));
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await view.page.$('[data-helper]'), null));
  await screen.type(coat, '150');
});

test('solids from a dried sample; what cannot be is told at its number', async () => {
  await lack(solids, 'dried_sample');
  await fill('dish_kg', '2,1012');
  await fill('wet_kg', '3,1254 g');
  await fill('dry_kg', '1.9');
  await screen.until(async () => assert.match(await words('[data-helper] .complaint'), /lighter than the dish/));
  await screen.until(async () => assert.equal(await view.page.$eval('[data-helper-use]', (e) => e.disabled), true));
  await fill('dry_kg', '2.6133');
  await result(/50 %/);
  await use();
  await screen.until(async () => assert.equal(await screen.value(solids), '50'));
});

test('humidity from a wet bulb, air speed from a fan, a wall from its weight', async () => {
  await open('workshop');
  const rh = 'workshop.air[0].humidity.relative_humidity';
  const entry = `fieldset${control('workshop.air')} li:first-child h4 button`;
  await screen.press(entry);
  await view.page.waitForSelector(control(rh));
  await lack(rh, 'wet_bulb');
  await fill('temperature_K', '40');
  await fill('wet_bulb_K', '20');
  await result(/14(\.\d+)? %/); // ASHRAE Handbook Fundamentals, chapter 1: 14 % at 40 °C and a wet bulb of 20 °C (from memory)
  await fill('wet_bulb_K', '45');
  await screen.until(async () => assert.match(await words('[data-helper] .complaint'), /warmer than the air/));
  await view.page.keyboard.press('Escape');
  await open('part');
  await lack(thickness, 'weighed_part');
  await fill('mass_kg', '312 g');
  await fill('area_m2', '1000 cm²');
  await fill('density_kg_per_m3', '1,04 g/cm3');
  await result(/3 mm/);
  await view.page.keyboard.press('Escape');
});

for (const theme of ['light', 'dark']) {
  test(`axe finds nothing in a helper, ${theme}`, async () => {
    await view.scheme(theme);
    await open('film');
    await lack(coat, 'sprayed');
    await fill('mass_kg', '12');
    await fill('area_m2', '0.05');
    await fill('overspray', '120');
    await clean(view.page); // one wrong
    await fill('overspray', '30');
    await result(/168 g\/m²/);
    await typing(solids, '1/2');
    await clean(view.page); // an answer, and a note of a unit
    await screen.type(solids, '50');
    await screen.press(`[data-lack="${coat}"]`);
  });
}

test('nothing scrolls sideways on a telephone', async () => {
  await view.page.setViewport(telephone(390)); // which loads the page anew
  await view.page.waitForSelector('.trial');
  await open('film');
  await lack(coat, 'comb');
  await fill('wet_thickness_m', '150');
  await result(/g\/m²/);
  await screen.still();
  const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  assert.ok(wide <= 0, `${wide} px too wide`);
  await clean(view.page);
});

test('all of it without a complaint on the console or a request elsewhere', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
