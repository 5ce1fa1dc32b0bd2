// The built page in a real browser, against the command. Both run the same core, one compiled for this machine, the
// other to WebAssembly: what the page prints must be what the command prints for the same job, to the last digit.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { openPage, telephone } from './browser.mjs';
import { demo, expected, refuse, serve } from './command.mjs';
import { pagesOf } from './paper.mjs';
import { complaint, control, routes, Screen, summary } from './screen.mjs';

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

/** Waits until the page shows the wanted answers as those to its inputs. */
const settlesOn = (wanted) =>
  screen.until(async () => {
    assert.deepEqual(await screen.answers(), wanted);
    assert.equal(await screen.old(), false, 'the answers are still marked as old');
  });

test('opens on the demo job, with the answers that the command gives', async () => {
  const wanted = expected(demo());
  assert.deepEqual(
    wanted.map((route) => route.kind),
    routes,
  );
  for (const route of wanted) assert.equal(Object.keys(route.marks).length, 7, route.kind);
  await settlesOn(wanted);
  assert.deepEqual(await screen.saveJob(), demo(), 'the job that the page saves is the one that the command prints');
});

test('an edited input changes the answers to those of the command for the edited job', async () => {
  const job = demo();
  const original = expected(job);
  const typed = Number(await screen.value(coat));
  const factor = typed / job.film.wet_coat_kg_per_m2; // the page shows a workshop's unit, the job holds SI
  const more = Math.round(typed * 1.2 * 10) / 10;
  job.film.wet_coat_kg_per_m2 = more / factor;
  const wanted = expected(job);
  assert.notDeepEqual(wanted, original, 'the edit must matter, or the test shows nothing');
  await screen.type(coat, String(more));
  await settlesOn(wanted);
  // The same by the page's own file, in which nothing but the edited number may differ, and that by rounding only.
  const saved = await screen.saveJob();
  assert.ok(Math.abs(saved.film.wet_coat_kg_per_m2 / job.film.wet_coat_kg_per_m2 - 1) < 1e-12);
  assert.deepEqual({ ...saved, film: { ...saved.film, wet_coat_kg_per_m2: 0 } }, { ...job, film: { ...job.film, wet_coat_kg_per_m2: 0 } });
  assert.deepEqual(expected(saved), wanted);
});

test('a bad input is refused at its field and in the list; the last good answer stays, marked as old', async () => {
  const good = await screen.answers();
  const typed = await screen.value(coat);
  for (const [bad, words] of [
    ['-5', /\d/], // out of range: says which numbers are accepted
    ['thick', /number/], // no number at all
  ]) {
    await screen.type(coat, bad);
    await screen.until(async () => {
      assert.match(await screen.text(complaint(coat)), words);
      assert.ok(await screen.visible(complaint(coat)), 'the complaint at the field is to be seen');
      assert.ok(await screen.visible(summary), 'the list of complaints is to be seen');
      assert.equal(await view.page.$$eval(`${summary} li`, (all) => all.length), 1);
      assert.equal(await view.page.$eval(control(coat), (e) => e.getAttribute('aria-invalid')), 'true');
      assert.ok(await screen.old(), 'the answers are marked as old');
    });
    assert.equal(await screen.value(coat), bad, 'what was typed stays to be corrected');
    assert.deepEqual(await screen.answers(), good);
  }
  // The command refuses the same number, naming the same field.
  const job = demo();
  job.film.wet_coat_kg_per_m2 = -0.005;
  assert.ok(refuse(job).endsWith(`[${coat}]\n`));

  await screen.type(coat, typed);
  await settlesOn(good);
  await screen.until(async () => {
    assert.equal(await screen.visible(complaint(coat)), false, 'the complaint is gone once it is put right');
    assert.equal(await screen.visible(summary), false);
  });
});

test('a click on a complaint leads to its field', async () => {
  const typed = await screen.value(coat);
  await screen.type(coat, '');
  await screen.until(async () => assert.ok(await screen.visible(`${summary} a`)));
  await view.page.click(`${summary} a`);
  await screen.until(async () => assert.equal(await view.page.evaluate(() => `#${document.activeElement.id}`), control(coat)));
  await screen.type(coat, typed);
  await screen.until(async () => assert.equal(await screen.visible(summary), false));
});

test('a file with bad values is opened to be mended, and the former job is one click away', async () => {
  const former = await screen.answers();
  const job = demo();
  job.film.wet_coat_kg_per_m2 = 5; // fifty times too much
  job.film.adhesive.solids_fraction = 'half';
  job.colour = 'black';
  await screen.openJob(JSON.stringify(job));
  const solids = 'film.adhesive.solids_fraction';
  await screen.until(async () => {
    assert.match(await screen.text(complaint(coat)), /between/, 'told though another field cannot be read');
    assert.match(await screen.text(complaint(solids)), /number/);
  });
  assert.equal(await screen.value(coat), '5000');
  assert.equal(await screen.value(solids), 'half', 'what the file holds stays to be corrected');
  assert.match(await screen.text('#job-message'), /Left out.*colour/);
  await screen.until(async () => assert.ok(await screen.old()));
  assert.deepEqual(await screen.answers(), former);

  // Mended it computes like any other job.
  await screen.type(coat, '170');
  await screen.type(solids, '50');
  job.film.wet_coat_kg_per_m2 = 0.17;
  job.film.adhesive.solids_fraction = 0.5;
  delete job.colour;
  await settlesOn(expected(job));

  await screen.bringBack();
  await settlesOn(former);
});

test('what is no job, or one of a later version, changes nothing', async () => {
  const before = await screen.saveJob();
  for (const [text, words] of [
    ['{"version": 1, "film"', /not JSON/],
    ['{"some": "thing"}', /no job of this page/],
    [JSON.stringify({ ...demo(), version: 99 }), /newer version.*99/],
  ]) {
    await screen.openJob(text);
    await screen.until(async () => assert.match(await screen.text('#job-message'), words));
  }
  assert.deepEqual(await screen.saveJob(), before);
});

test('a pasted job that leaves things out gets the defaults that the command gives it', async () => {
  const job = { version: 1, film: { wet_coat_kg_per_m2: 0.16 }, tunnel: { zones: [{ length_m: 7 }] } };
  const former = await screen.answers();
  await screen.paste(JSON.stringify(job));
  await settlesOn(expected(job));
  await screen.bringBack();
  await settlesOn(former);
});

test('a page left with a bad job shows it again, with the last good answers marked as old', async () => {
  const good = await screen.answers();
  const typed = await screen.value(coat);
  for (const [bad, words] of [
    ['5', /between/],
    ['thick', /number/],
  ]) {
    await screen.type(coat, bad);
    await screen.until(async () => assert.match(await screen.text(complaint(coat)), words));
    await view.page.reload({ waitUntil: 'load' });
    await screen.until(async () => {
      assert.deepEqual(await screen.answers(), good);
      assert.ok(await screen.old());
    });
    assert.equal(await screen.value(coat), bad);
    await screen.until(async () => assert.match(await screen.text(complaint(coat)), words));
  }
  await screen.type(coat, typed);
  await settlesOn(good);
});

test('the demo prints on one page of either paper, in less than half a megabyte', async () => {
  for (const format of ['A4', 'Letter']) {
    const paper = Buffer.from(await view.page.pdf({ format }));
    assert.equal(pagesOf(paper), 1, format);
    assert.ok(paper.length < 500_000, `${format}: ${paper.length} bytes`);
  }
});

test('nothing scrolls sideways on a telephone', async () => {
  for (const width of [390, 360]) {
    await view.page.setViewport(telephone(width)); // may load the page anew
    for (const kind of routes) {
      await screen.press(`#tab-${kind}`);
      await screen.still(); // pictures are drawn anew
      const wide = await view.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      assert.ok(wide <= 0, `${wide} px too wide at ${width} px, ${kind}`);
    }
  }
});

test('said nothing on the console and asked nothing of anyone else', () => {
  assert.ok(view.asked.has('/core.wasm'), 'the requests of the worker are watched too');
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
