// Jobs as a person handles them: the list, two side by side, undo, links and files, and all that may go wrong with them,
// which ends in a message, with every job as it was.
//
// Run by `make browser-test`, which sets DRYWRIGHT (the command with the page in it) and the browser.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, afterEach, before, test } from 'node:test';
import { clean } from './axe.mjs';
import { openPage } from './browser.mjs';
import { demo, expected, serve } from './command.mjs';
import { control, Screen } from './screen.mjs';

const coat = 'film.wet_coat_kg_per_m2';

let server, view, page, screen;

before(async () => {
  server = await serve();
  view = await openPage(server.address, {
    // A browser without a head may forbid copying; what would be copied is caught instead.
    prepare: (p) =>
      p.evaluateOnNewDocument(() => {
        if (!globalThis.Clipboard) return; // no page yet
        Clipboard.prototype.writeText = (words) => Promise.resolve(void (globalThis.copied = words));
      }),
  });
  page = view.page;
  screen = new Screen(page, view.downloads);
  await settled(demo());
});

after(async () => {
  await view?.close();
  await server?.stop();
});

afterEach(async () => {
  await page.evaluate(() => document.querySelector('dialog[open]')?.close());
  for (const other of await view.browser.pages()) if (other !== page && other.url().startsWith(server.address)) await other.close();
  await page.bringToFront();
});

/** Waits until the answers are those of the command to a job. */
const settled = (job, on = screen) => {
  const wanted = expected(job);
  return on.until(async () => {
    assert.deepEqual(await on.answers(), wanted);
    assert.equal(await on.old(), false);
  });
};

/** Presses a button once it is there, in the window that lies in front, as a person would. */
const press = async (selector, on = page) => {
  await on.bringToFront();
  await new Screen(on).press(selector);
};

const says = (words, on = screen, where = '#job-message [role=status]') =>
  on.until(async () => assert.match(await on.text(where), words));

/** The lines of the list, opened for it: id, name, and which is at hand. */
async function list(on = page) {
  await press('[data-job=list]', on);
  const lines = await linesOfWhenThere(on);
  await close(on);
  return lines;
}

const linesOfWhenThere = async (on = page) => {
  await on.waitForSelector('#jobs [data-line]');
  return linesOf(on);
};

const linesOf = (on = page) =>
  on.$$eval('#jobs [data-line]', (all) =>
    all.map((e) => ({
      id: e.dataset.line,
      name: e.querySelector('h3')?.firstChild.textContent.trim(),
      atHand: e.classList.contains('hand'),
    })),
  );

/** Closes what lies over the page. The page hears of it a moment after the browser has closed it. */
const close = async (on = page) => {
  await on.bringToFront(); // no key reaches a window behind another
  await on.keyboard.press('Escape');
  await gone(on);
};

const gone = (on = page) => screen.until(async () => assert.equal(await on.$('dialog'), null));

/** Turns to the job of this name. */
async function openNamed(name, on = page) {
  const { id } = (await list(on)).find((l) => l.name === name);
  await press('[data-job=list]', on);
  await press(`#jobs [data-line="${id}"] [data-act=open]`, on);
  await gone(on);
}

const names = (lines) => lines.map((l) => l.name).sort();
const act = (id, what) => press(`#jobs [data-line="${id}"] [data-act=${what}]`);
const rival = (which, on = page) => press(`[data-job=rival] button:nth-of-type(${which})`, on);
/** The records of jobs as the browser keeps them. */
const kept = (on = page) =>
  on.evaluate(() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith('drywright.job.'))));
/** Whether two sets of records are the same, which are too long to be printed. */
const same = (a, b) => JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
/** Waits until the value of a field is kept, which is a moment after it was typed. */
const keeps = (value, on = screen) =>
  on.until(async () => {
    const jobs = Object.values(await kept(on.page)).map((text) => JSON.parse(text).job);
    assert.ok(
      jobs.some((job) => job.film.wet_coat_kg_per_m2 === value),
      `${value} is kept`,
    );
  });

test('a job of the list is renamed, duplicated, deleted and put back', async () => {
  await press('[data-job=list]');
  await page.waitForSelector('#jobs [data-line]');
  const [first] = await linesOf();
  assert.deepEqual(await linesOf(), [{ id: first.id, name: demo().name, atHand: true }]);

  await act(first.id, 'rename');
  await page.waitForSelector('#jobs .rename input:focus');
  await page.keyboard.type('Strip A');
  await page.keyboard.press('Enter');
  await screen.until(async () => assert.deepEqual(names(await linesOf()), ['Strip A']));
  await screen.until(async () => assert.equal(await page.$eval('#job-name', (e) => e.value), 'Strip A'));

  await act(first.id, 'duplicate');
  await screen.until(async () => assert.equal((await linesOf()).length, 2));
  const copy = (await linesOf()).find((l) => l.id !== first.id);
  assert.match(copy.name, /Strip A/);
  assert.notEqual(copy.name, 'Strip A');
  await act(copy.id, 'rename');
  await page.waitForSelector('#jobs .rename input:focus');
  await page.keyboard.type('Strip B');
  await page.keyboard.press('Enter');
  await screen.until(async () => assert.deepEqual(names(await linesOf()), ['Strip A', 'Strip B']));
  await clean(page);

  // One that is not at hand, then the one at hand: the other takes its place until it is back.
  for (const [id, next] of [
    [copy.id, first.id],
    [first.id, copy.id],
  ]) {
    const records = await kept();
    await act(id, 'delete');
    await screen.until(async () => assert.deepEqual(await linesOf(), [{ ...(id === copy.id ? first : copy), id: next, name: id === copy.id ? 'Strip A' : 'Strip B', atHand: true }]));
    assert.equal(`drywright.job.${id}` in (await kept()), false);
    await press('#jobs .said button');
    await screen.until(async () => assert.ok(same(await kept(), records), 'both stand as they stood'));
    await screen.until(async () => assert.deepEqual(names(await linesOf()), ['Strip A', 'Strip B']));
    await screen.until(async () => assert.equal((await linesOf()).find((l) => l.atHand).id, first.id));
  }
  // Whoever opens the list again at once has it, though the browser tells the page a frame later that it was closed.
  await page.evaluate(() => {
    document.querySelector('dialog').close();
    document.querySelector('[data-job=list]').click();
  });
  await page.waitForSelector('#jobs[open] [data-line]');
  await screen.still();
  assert.ok(await page.$('#jobs[open] [data-line]'));
  await close();
});

test('what was changed is undone and done again, by buttons and by keys', async () => {
  const value = async () => Number(await screen.value(coat));
  const before = await value();
  const is = (wanted) => screen.until(async () => assert.equal(await value(), wanted));
  await screen.type(coat, '180');
  await screen.type(coat, '190');
  const keys = async (...held) => {
    for (const key of held.slice(0, -1)) await page.keyboard.down(key);
    await page.keyboard.press(held.at(-1));
    for (const key of held.slice(0, -1).reverse()) await page.keyboard.up(key);
  };
  const ways = [
    [() => screen.undo(), () => press('[data-job=redo]:not(:disabled)')],
    [() => keys('Control', 'z'), () => keys('Control', 'y')],
    [() => keys('Control', 'z'), () => keys('Control', 'Shift', 'Z')],
  ];
  for (const [back, again] of ways) {
    await back();
    await is(180);
    await says(/^Undone: /);
    await back();
    await is(before);
    await again();
    await is(180);
    await says(/^Redone: /);
    await again();
    await is(190);
  }
  // In the midst of typing the key belongs to the field.
  await page.click(control(coat));
  await page.keyboard.type('5');
  await says(/^Redone: /);
  await keys('Control', 'z');
  await screen.still();
  assert.match(await screen.text('#job-message'), /^Redone: /);
  await page.keyboard.press('Tab');
  await screen.type(coat, String(before));
  await settled(demo());
});

test('two jobs lie side by side, with the answers of each and the inputs in which they differ', async () => {
  const other = { ...demo(), name: 'Strip B' };
  const mine = { ...demo(), name: 'Strip A', film: { ...demo().film, wet_coat_kg_per_m2: 0.2 } };
  await screen.type(coat, '200');
  await settled(mine);
  const { id } = (await list()).find((l) => l.name === 'Strip B');
  await press('[data-job=compare]');
  await page.waitForSelector('#compare-left');
  await page.select('#compare-left', id);
  const read = () =>
    page.evaluate(() => {
      const words = (e) => e.textContent.trim().replace(/\s+/g, ' ');
      return {
        differ: [...document.querySelectorAll('#compare [data-differs]')].map((row) => [row.dataset.differs, ...[...row.cells].slice(1).map(words)]),
        pairs: [...document.querySelectorAll('#compare [data-pair]')].map((pair) => ({
          kind: pair.dataset.pair,
          verdicts: [...pair.querySelectorAll('.which')].map(words),
          sentences: [...pair.querySelectorAll('.sentence')].map(words),
          marks: [...pair.querySelectorAll('tbody tr')].map((row) => [...row.cells].slice(0, 3).map(words)),
          signs: [...pair.querySelectorAll('tbody tr')].map((row) => row.querySelector('.sign') !== null),
        })),
      };
    });
  const [left, right] = [expected(other), expected(mine)];
  await screen.until(async () => {
    const { differ, pairs } = await read();
    assert.deepEqual(
      differ.map(([path]) => path),
      ['name', coat],
    );
    assert.deepEqual(differ[0].slice(1), ['Strip B', 'Strip A']);
    assert.match(differ[1][2], /^200/);
    assert.deepEqual(
      pairs.map((p) => [p.kind, p.sentences]),
      left.map((l, i) => [l.kind, [l.sentence, right[i].sentence]]),
    );
    for (const [i, { verdicts, marks, signs }] of pairs.entries()) {
      for (const verdict of verdicts) assert.match(verdict, /^(Left|Right) ?[A-Z]/, 'a verdict on either side');
      assert.deepEqual(
        marks,
        Object.keys(left[i].marks).map((label) => [label, left[i].marks[label], right[i].marks[label]]),
      );
      assert.deepEqual(
        signs,
        marks.map(([, a, b]) => a !== b),
        'what differs bears a sign',
      );
      assert.ok(signs.includes(true), 'a thicker coat must matter, or the test shows nothing');
    }
  });
  await clean(page);
  await close();
  await screen.undo();
  await settled(demo());
});

/** Copies the link to the job at hand. */
async function copyLink() {
  await page.evaluate(() => delete globalThis.copied);
  await press('[data-job=link]');
  await says(/^The link is copied/);
  return page.evaluate(() => globalThis.copied);
}

test('a link carries a job into another window, as a new one, and leaves the job at hand alone', async () => {
  const job = { ...demo(), name: 'Linked' };
  job.film.wet_coat_kg_per_m2 = 0.21;
  await screen.openJob(JSON.stringify(job));
  await settled(job);
  const link = await copyLink();
  assert.ok(link.startsWith(`${server.address.replace(/\/$/, '')}/#job=1.`), link.slice(0, 60));
  await openNamed('Strip A');
  await settled(demo());
  const [before, records] = [await list(), await kept()];

  const next = new Screen(await view.another(link), view.downloads);
  await settled(job, next);
  assert.equal(await next.page.evaluate(() => location.hash), '', 'the address is freed of the job');
  await next.page.reload({ waitUntil: 'load' }); // adds no second one
  await settled(job, next);
  assert.deepEqual(await next.saveJob(), job);
  const after = await list(next.page);
  assert.deepEqual(names(after), names([...before, { name: 'Linked' }]));
  const now = await kept();
  for (const [key, text] of Object.entries(records)) assert.ok(now[key] === text, 'no other job is touched');
  await page.bringToFront();
  await settled(demo());
  assert.equal(await page.$('[data-job=rival]'), null);
});

test('a file carries a job, as a new one', async () => {
  const { name } = (await list()).find((l) => l.atHand);
  const before = await list();
  const saved = await screen.saveJob();
  assert.deepEqual(saved, { ...demo(), name });
  await screen.openJob(JSON.stringify(saved));
  await says(/in the list as a new job/);
  await settled(demo());
  const after = await list();
  assert.equal(after.length, before.length + 1);
  assert.ok(!before.some((l) => l.id === after.find((a) => a.atHand).id));
  assert.deepEqual(await screen.saveJob(), saved);
  await screen.bringBack();
  await says(/is open/);
});

test('a link that cannot be read, and a file that is no job, end in a message', async () => {
  const link = await copyLink();
  const fragment = link.slice(link.indexOf('#'));
  const [records, job] = [await kept(), await screen.saveJob()];
  for (const [spoilt, words] of [
    [fragment.slice(0, fragment.length / 2), /cut or altered/],
    [fragment.replace('job=1.', 'job=2.'), /newer version.*form 2/],
    [`#job=1.${'A'.repeat(1_000_000)}`, /too large/],
  ]) {
    await page.evaluate((hash) => void (location.hash = hash), spoilt);
    await says(words);
    await page.evaluate(() => void (location.hash = ''));
    await screen.openJob('{}'); // so that the next message is told from this one
    await says(/no job of this page/);
    await screen.paste(`See ${server.address}/${spoilt}`);
    await says(words);
  }

  await page.evaluate(() => {
    globalThis.readings = 0;
    const { text } = Blob.prototype;
    Blob.prototype.text = function () {
      globalThis.readings++;
      return text.call(this);
    };
  });
  const big = join(view.downloads, 'big.txt');
  await writeFile(big, Buffer.alloc(50_000_000, ' '));
  await (await page.waitForSelector('.bar input[type=file]')).uploadFile(big);
  await says(/big\.txt.*larger than any job.*was not read/);
  assert.equal(await page.evaluate(() => globalThis.readings), 0);
  assert.ok(same(await kept(), records), 'no job is touched');
  assert.deepEqual(await screen.saveJob(), job);
  await page.evaluate(() => history.replaceState(null, '', location.pathname));
});

test('where copying is forbidden the link is there to be copied by hand', async () => {
  const next = new Screen(await view.another(), view.downloads);
  await next.page.evaluate(() => (Clipboard.prototype.writeText = () => Promise.reject(new Error('forbidden'))));
  await press('[data-job=link]', next.page);
  await says(/Copy the link here/, next);
  await next.until(async () => assert.match(await next.page.$eval('#job-message input', (e) => e.value), /#job=1\.[\w-]+$/));
});

test('a full store is told, and what was changed is kept once there is room', async () => {
  await screen.still();
  // At once, since what was done before may be kept a moment after it.
  const before = await page.evaluate(() => {
    globalThis.setItem = Storage.prototype.setItem;
    Storage.prototype.setItem = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    return Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith('drywright.job.')));
  });
  await screen.type(coat, '150');
  await says(/store is full/, screen, '[data-job=store]');
  assert.ok(same(await kept(), before), 'nothing is written');
  // Nothing is lost by turning to another job and back.
  const { id } = (await list()).find((l) => l.name === 'Strip B');
  const mine = (await list()).find((l) => l.atHand);
  for (const [to, value] of [
    [id, '170'],
    [mine.id, '150'],
  ]) {
    await press('[data-job=list]');
    await act(to, 'open');
    await screen.until(async () => assert.equal(Number(await screen.value(coat)), Number(value === '170' ? demo().film.wet_coat_kg_per_m2 * 1000 : value)));
  }
  await says(/store is full/, screen, '[data-job=store]');
  // As the message says: a job is deleted, and there is room.
  await page.evaluate(() => (Storage.prototype.setItem = globalThis.setItem));
  await press('[data-job=list]');
  await act((await linesOfWhenThere()).find((l) => l.name === 'Linked').id, 'delete');
  await screen.until(async () => assert.equal(await page.$('[data-job=store]'), null));
  await keeps(0.15);
  await close();
  await page.reload({ waitUntil: 'load' });
  await screen.until(async () => assert.equal(await screen.value(coat), '150'));
});

test('a store that is forbidden is told, and jobs are kept until the page is closed', async () => {
  const other = await openPage(server.address, {
    prepare: (p) =>
      p.evaluateOnNewDocument(() => {
        for (const store of ['localStorage', 'sessionStorage'])
          Object.defineProperty(globalThis, store, {
            get() {
              throw new DOMException('forbidden', 'SecurityError');
            },
          });
      }),
  });
  try {
    const next = new Screen(other.page, other.downloads);
    await settled(demo(), next);
    await next.type(coat, '150');
    await says(/does not let the page keep jobs/, next, '[data-job=store]');
    const job = demo();
    await next.openJob(JSON.stringify({ ...job, name: 'Second' }));
    await settled(job, next);
    assert.deepEqual(names(await list(next.page)), names([{ name: job.name }, { name: 'Second' }]));
    await next.bringBack();
    await next.until(async () => assert.equal(await next.value(coat), '150'));
    assert.deepEqual(other.complaints, []);
  } finally {
    await other.close();
  }
});

test('two windows that change the same job are asked which is to stay', async () => {
  await screen.type(coat, '150');
  await keeps(0.15);
  const next = new Screen(await view.another(), view.downloads);
  const is = (on, value) => on.until(async () => assert.equal(await on.value(coat), value));
  await is(next, '150');
  await next.page.bringToFront();
  await next.type(coat, '160');
  await keeps(0.16, next);
  // The other's is taken over, and undo brings back one's own.
  await page.bringToFront();
  await says(/changed in another tab/, screen, '[data-job=rival] p');
  await is(screen, '150');
  await rival(1);
  await is(screen, '160');
  await screen.undo();
  await is(screen, '150');
  await keeps(0.15);

  // One's own becomes a job of its own.
  await next.page.bringToFront();
  await says(/changed in another tab/, next, '[data-job=rival] p');
  await next.type(coat, '165');
  const before = await list();
  await next.page.bringToFront();
  await rival(2, next.page);
  await says(/Yours is kept as/, next);
  await keeps(0.165, next);
  await keeps(0.15, next);
  assert.equal((await list(next.page)).length, before.length + 1);

  // One that is deleted in one window stays in the other, if it is to.
  const { id } = (await list(next.page)).find((l) => l.atHand);
  await page.bringToFront();
  await press('[data-job=list]');
  await linesOfWhenThere();
  await act(id, 'delete');
  await says(/deleted in another tab/, next, '[data-job=rival] p');
  await rival(1, next.page);
  await says(/kept again/, next);
  await keeps(0.165, next);
  await close();
});

test('the job is saved in German too', async () => {
  await page.evaluate(() => localStorage.setItem('drywright.language', 'de'));
  await page.reload({ waitUntil: 'load' });
  await screen.until(async () => assert.equal(await page.$eval('html', (e) => e.lang), 'de'));
  assert.equal((await screen.saveJob()).film.wet_coat_kg_per_m2, 0.15);
  await press('[data-job=list]');
  await linesOfWhenThere();
  await clean(page);
  await close();
});

test('said nothing on the console and asked nothing of anyone else', () => {
  assert.deepEqual(view.complaints, []);
  assert.deepEqual(view.elsewhere, []);
});
