// Pictures in the built page, in a real browser: each can be read off by keyboard and pointer, read as a table, and saved as a
// drawing, an image and a table that hold what the command computes.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and CHROMIUM or FIREFOX (the browser).
import assert from 'node:assert/strict';
import { readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { openPage } from './browser.mjs';
import { answer, demo, serve } from './command.mjs';
import { Screen } from './screen.mjs';

let server, view, screen, computed;

before(async () => {
  computed = answer(demo());
  server = await serve();
  view = await openPage(server.address);
  screen = new Screen(view.page, view.downloads);
  await view.page.waitForSelector('[role=tab]');
});

after(async () => {
  await view?.close();
  await server?.stop();
});

const route = (kind) => computed.routes.find((r) => r.kind === kind);

/** Brings every picture of a route near enough to be drawn, and marks each by its title. */
async function draw(kind) {
  await screen.press(`#tab-${kind}`);
  await view.page.waitForSelector('.moist');
  await view.page.$eval('.moist', (e) => e.scrollIntoView());
  await view.page.waitForSelector('.moist figure');
  const figures = await view.page.$$('.answers figure, #detail-panel figure');
  const titles = [];
  for (const figure of figures) {
    await figure.evaluate((e) => e.scrollIntoView({ block: 'center' }));
    await figure.waitForSelector('svg.plot');
    await figure.waitForSelector('[role=slider]');
    titles.push(
      await figure.evaluate((e) => {
        const name = e.querySelector('.name').firstChild.textContent.trim();
        e.dataset.picture = name;
        return name;
      }),
    );
  }
  return titles;
}

const inside = (title, selector) => `figure[data-picture="${title}"] ${selector}`;

/** Saves a picture through its menu and gives the bytes of the file. */
async function save(title, format) {
  for (const name of await readdir(view.downloads)) await rm(join(view.downloads, name));
  await screen.press(inside(title, '.opener'));
  await screen.press(inside(title, `[data-save=${format}]`));
  return screen.until(async () => {
    const name = (await readdir(view.downloads)).find((n) => n.endsWith(`.${format}`));
    assert.ok(name, 'not saved yet');
    const bytes = await readFile(join(view.downloads, name));
    const ended = format === 'png' ? bytes.includes('IEND') : bytes.at(-1) === 10;
    assert.ok(ended, 'still being written');
    return { name, bytes };
  });
}

/** Rows of a saved table, without the mark at its beginning. */
function rowsOf(bytes) {
  const cells = (line) => [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((m) => m[1]?.replaceAll('""', '"') ?? m[2]);
  const text = bytes.toString('utf8');
  assert.equal(text.charCodeAt(0), 0xfeff, 'no mark of UTF-8');
  return text.slice(1).trimEnd().split('\r\n').map(cells);
}

/** The size of a PNG, from its first chunk (PNG specification, section 11.2.2). */
function sizeOf(png) {
  assert.deepEqual([...png.subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
  assert.equal(png.toString('latin1', 12, 16), 'IHDR');
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

/** What stands in the table under a picture, opened first. */
async function twin(title) {
  await view.page.$eval(inside(title, 'figcaption > details'), (e) => (e.open = true));
  await view.page.waitForSelector(inside(title, 'figcaption > details table'));
  return view.page.$eval(inside(title, 'figcaption > details table'), (table) =>
    [...table.rows].map((row) => [...row.cells].map((c) => c.textContent.trim())),
  );
}

test('every picture of every route has a name, a menu, a read-out and a table', async () => {
  for (const { kind } of computed.routes) {
    const titles = await draw(kind);
    assert.ok(titles.length >= 6, titles.join());
    assert.equal(new Set(titles).size, titles.length, 'two pictures have one name');
    for (const title of titles) {
      const { label, menu, slider, value } = await view.page.$eval(`figure[data-picture="${title}"]`, (e) => ({
        label: e.querySelector('svg.plot').getAttribute('aria-label'),
        menu: e.querySelector('.opener').getAttribute('aria-label'),
        slider: e.querySelector('[role=slider]').getAttribute('aria-label'),
        value: e.querySelector('[role=slider]').getAttribute('aria-valuetext'),
      }));
      assert.ok(label.length > 20 && !/NaN|undefined/.test(label), label);
      assert.ok(menu.includes(title) && slider.includes(title));
      assert.ok(value && !/NaN|undefined|null/.test(value), `${title}: ${value}`);
      const [head, ...rows] = await twin(title);
      assert.ok(head.length >= 2 && rows.length >= 2, title);
      assert.ok(!/NaN|undefined|null/.test(rows.flat().join()), title);
    }
    console.log(`  ${kind}: ${titles.join('; ')}`);
  }
});

test('arrow keys move along the data, and what is shown is what is told', async () => {
  await draw('tunnel');
  const slider = inside('Temperatures', '[role=slider]');
  await view.page.focus(slider);
  const told = () => view.page.$eval(slider, (e) => e.getAttribute('aria-valuetext'));
  const shown = () => view.page.$eval(`${slider} .card`, (e) => e.textContent.replace(/\s+/g, ' '));
  const now = () => view.page.$eval(slider, (e) => Number(e.getAttribute('aria-valuenow')));
  const at = (wanted) => screen.until(async () => assert.equal(await now(), wanted));
  await view.page.keyboard.press('Home');
  await at(0);
  const first = await told();
  const { film_temperature_K: film } = route('tunnel').curves;
  assert.match(first, new RegExp(`film ${(film[0] - 273.15).toPrecision(3).replace(/\.?0+$/, '')} °C`));
  await view.page.keyboard.press('ArrowRight');
  await view.page.keyboard.press('ArrowRight');
  await view.page.keyboard.press('ArrowLeft');
  await at(1);
  assert.notEqual(await told(), first);
  await view.page.keyboard.press('PageUp');
  await screen.until(async () => assert.ok((await now()) > 5));
  await view.page.keyboard.press('End');
  await at(Number(await view.page.$eval(slider, (e) => e.getAttribute('aria-valuemax'))));
  for (const words of (await told()).split(', ')) for (const word of words.split(' ')) assert.ok((await shown()).includes(word), word);
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await view.page.$(`${slider} .card`), null));
});

test('a pointer reads the nearest value off', async () => {
  const slider = inside('Water in the film', '[role=slider]');
  const words = [];
  for (const share of [0.3, 0.7])
    await screen.until(async () => {
      const found = await view.page.$(slider);
      await found.evaluate((e) => e.scrollIntoView({ block: 'center' }));
      await screen.still(); // what came into view may move it
      const box = await found.boundingBox();
      await view.page.mouse.move(box.x + share * box.width, box.y + box.height / 2);
      const card = await view.page.$(inside('Water in the film', '.card'));
      assert.ok(card, 'nothing is read off');
      const said = await card.evaluate((e) => e.textContent);
      assert.ok(!words.includes(said), 'another value is read off at another place');
      words.push(said);
    });
  assert.match(words[0], /mean.*g\/kg/s);
  await view.page.mouse.move(0, 0);
});

test('pictures are saved as drawings that need nothing of the page', async () => {
  for (const title of await draw('tunnel')) {
    const { bytes } = await save(title, 'svg');
    const text = bytes.toString('utf8');
    assert.doesNotMatch(text, /var\(|light-dark|currentColor|class=|style=|aria-|href/, title);
    const drawn = await view.page.evaluate((words) => {
      const parsed = new DOMParser().parseFromString(words, 'image/svg+xml');
      const svg = parsed.documentElement;
      return {
        error: parsed.querySelector('parsererror')?.textContent,
        root: svg.localName,
        box: svg.getAttribute('viewBox'),
        size: [svg.getAttribute('width'), svg.getAttribute('height')].map(Number),
        texts: [...svg.querySelectorAll('text')].map((t) => t.textContent),
        fonts: [...svg.querySelectorAll('text')].every((t) => t.getAttribute('font-family') && t.getAttribute('fill')),
        ground: svg.querySelector('rect').getAttribute('fill'),
      };
    }, text);
    assert.equal(drawn.error, undefined, title);
    assert.deepEqual([drawn.root, drawn.box], ['svg', `0 0 ${drawn.size.join(' ')}`]);
    assert.ok(drawn.texts.join(' ').includes(title) && drawn.fonts, title);
    assert.match(drawn.ground, /^(#fff|rgb\(255, 255, 255\))$/);

    const png = (await save(title, 'png')).bytes;
    assert.deepEqual(sizeOf(png), drawn.size.map((side) => 2 * side), title);
    const { corner, inked } = await view.page.evaluate(async (base64) => {
      const image = new Image();
      image.src = `data:image/png;base64,${base64}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width, image.height];
      const ink = canvas.getContext('2d');
      ink.drawImage(image, 0, 0);
      const { data } = ink.getImageData(0, 0, image.width, image.height);
      let inked = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i] < 200) inked++;
      return { corner: [...data.slice(0, 4)], inked: inked / (data.length / 4) };
    }, png.toString('base64'));
    assert.deepEqual(corner, [255, 255, 255, 255], title);
    assert.ok(inked > 0.005 && inked < 0.6, `${title}: ${(100 * inked).toFixed(1)} % of the picture is dark`);
  }
});

test('a dark screen saves the same drawing as a light one', async () => {
  const drawn = [];
  for (const theme of ['light', 'dark']) {
    await view.scheme(theme);
    await draw('tunnel');
    drawn.push((await save('Through the tunnel', 'svg')).bytes.toString('utf8'));
  }
  assert.equal(drawn[1], drawn[0]);
  await view.scheme('light');
});

test('the saved values are those of the command, and the table shows some of them', async () => {
  await draw('tunnel');
  const { curves } = route('tunnel');
  const [head, ...rows] = rowsOf((await save('Temperatures', 'csv')).bytes);
  assert.deepEqual(head, ['time after spraying (s)', 'air (°C)', 'film (°C)', 'back of the part (°C)']);
  assert.ok(rows.length > 50);
  rows.forEach(([time, air, film, back], i) => {
    assert.ok(Math.abs(Number(time) - curves.time_s[i]) < 1e-6 * (1 + curves.time_s[i]));
    for (const [value, of] of [[air, 'air_temperature_K'], [film, 'film_temperature_K'], [back, 'part_back_K']])
      assert.ok(Math.abs(Number(value) - (curves[of][i] - 273.15)) < 1e-6, `row ${i}: ${value}`);
  });
  const table = (await twin('Temperatures')).slice(1);
  const brief = (v) => Number(Number(v).toPrecision(3));
  let at = -1;
  for (const [, ...cells] of table) {
    at = rows.findIndex((row, i) => i > at && cells.every((c, k) => Number(c.replace('−', '-')) === brief(row[k + 1])));
    assert.ok(at >= 0, `the file has no row with ${cells.join(', ')}`);
  }
});

test('the moist-air chart carries the air and the film of the answer', async () => {
  const { curves } = route('tunnel');
  const [, ...rows] = rowsOf((await save('Moist-air chart', 'csv')).bytes);
  assert.equal(rows.length, curves.time_s.length);
  rows.forEach((row, i) => {
    assert.ok(Math.abs(Number(row[2]) - (curves.air_temperature_K[i] - 273.15)) < 1e-6);
    assert.ok(Math.abs(Number(row[3]) - 1e3 * curves.air_humidity_ratio_kg_per_kg[i]) < 1e-6);
    assert.ok(Math.abs(Number(row[7]) - (curves.film_temperature_K[i] - 273.15)) < 1e-6);
  });
});

test('with a menu open and a value read off, nothing is wrong for those who do not see it', async () => {
  await draw('static_oven');
  await view.page.focus(inside('Moist-air chart', '[role=slider]'));
  await view.page.keyboard.press('End');
  await screen.press(inside('Moist-air chart', '.opener'));
  await view.page.waitForSelector(inside('Moist-air chart', '[data-save]'));
  await clean(view.page);
  await view.page.keyboard.press('Escape');
  await screen.until(async () => assert.equal(await view.page.$(inside('Moist-air chart', '[data-save]')), null));
});

test('nothing was asked of anyone else, and the page complains of nothing', () => {
  assert.deepEqual(view.elsewhere, []);
  assert.deepEqual(view.complaints, []);
});
