/** Help: the words of the trade, the questions, the published numbers, the cautions, the sheet, the announcements. */
import { expect, test } from 'vitest';
import { Asking, examples, questionNames } from '../../src/help/asking.svelte';
import { HelpState } from '../../src/help/HelpState.svelte';
import { filtered, grouped, rowsOf, type Proof } from '../../src/help/proof';
import { entries, piecesOf, search } from '../../src/help/terms';
import { verdictOf } from '../../src/help/verdicts';
import type { Catalogue, Job, Result } from '../../src/generated/contract';
import { cautionsOf } from '../../src/page/cautions';
import { betweenKeys, restFrom, stands } from '../../src/page/resting';
import { cut, fitted, leastOf, lists, refill, sizes, type Counts } from '../../src/page/sheet';
import { PlanState, type Sweeper } from '../../src/state/plan.svelte';
import { glossary } from '../../src/text/glossary';
import { detail } from '../../src/text/detail';
import { tunnel } from '../fixtures/result';

/** What a newcomer would stumble over. Whatever of it the page says in an answer must be explained. */
const jargon =
  'touch-dry, tack-free, dry through, open time, conversion, cured, crosslinker, dispersion, solids, dew point, dew, wet bulb, film-forming temperature, dtex, flock, pile, overspray, AICc, residual, outlier, multiplier, transfer coefficient, humidity ratio, relative humidity, saturated, skin number, boiling, regain, exhaust, make-up, set-point, dwell, line speed, carrier, spot, co-solvent, lower flammable limit, margin, deadline, binds, sorption, diffusivity, equivalent time, activation energy, infrared, air changes';

test('every word of the trade has its entry, and a sentence that says it leads there', () => {
  expect(entries().length).toBeGreaterThanOrEqual(45);
  for (const word of jargon.split(', ')) {
    const [found] = piecesOf(`It says ${word} here.`).filter((p) => p.key !== null);
    expect(found?.words.toLowerCase(), word).toBe(word.toLowerCase());
  }
});

test('each form belongs to one entry, and no entry is explained by itself alone', () => {
  const forms = entries().flatMap(([, e]) => e.forms.split(';').map((f) => f.toLowerCase()));
  expect(new Set(forms).size).toBe(forms.length);
  for (const [key, { text }] of entries()) expect(text.split(' ').length, key).toBeGreaterThan(7);
});

test('a sentence is cut at its terms: the longer one counts, each once, none inside another word, nothing lost', () => {
  const sentence = 'Dew point 9 °C; dew settles, and the dew point and the spotless pile stay.';
  const pieces = piecesOf(sentence);
  expect(pieces.map((p) => p.words).join('')).toBe(sentence);
  expect(pieces.filter((p) => p.key).map((p) => [p.words, p.key])).toEqual([
    ['Dew point', 'dew_point'],
    ['dew', 'dew'],
    ['pile', 'pile'],
  ]);
});

test('what the sentences before have marked is not marked again, in whatever form they say it', () => {
  const marked = (sentence: string, before: string) => piecesOf(sentence, before).flatMap((p) => p.key ?? []);
  expect(marked('The pile keeps the dew point.', '')).toEqual(['pile', 'dew_point']);
  expect(marked('The pile keeps the dew point.', 'A fibre layer is in the way.')).toEqual(['dew_point']);
  expect(marked('The pile keeps the dew.', 'The dew point is low.')).toEqual(['pile', 'dew']);
});

test('the search finds by name, by other forms and by what is said', () => {
  expect(search('mfft').map(([key]) => key)).toEqual(['film_forming']);
  expect(search('ten kilometres').map(([key]) => key)).toEqual(['dtex']);
  expect(search('nothing like this')).toEqual([]);
  expect(search('').length).toBe(Object.keys(glossary).length);
});

const room = { ...tunnel, kind: 'room' as const, title: 'Room, overnight', limits: [] };
const late = { ...room.answer, verdict: 'too_late' as const, margin_s: -3600, margin_text: '1 h' };
const result = (routes: Result['routes']): Result =>
  ({ routes, warnings: [], rests: [] }) as unknown as Result;

test('overnight: yes, no, and what heat does instead', () => {
  expect(verdictOf('overnight', result([room]))).toEqual(['Yes. The room is enough, with 35 min to spare.']);
  expect(verdictOf('overnight', result([{ ...room, answer: late }, tunnel]))).toEqual([
    'No. The room is 1 h too late.',
    'With heat it is: Tunnel oven, with 35 min to spare.',
  ]);
  expect(verdictOf('overnight', result([{ ...room, answer: late }]))).toEqual([
    'No. The room is 1 h too late.',
  ]);
  const never = { ...late, verdict: 'not_reached' as const, margin_s: null };
  expect(verdictOf('overnight', result([{ ...room, answer: never }]))[0]).toMatch(/^No\..*not ready at all/);
  expect(
    verdictOf('overnight', result([{ ...room, answer: { ...room.answer, verdict: 'at_risk' } }]))[0],
  ).toMatch(/risks/);
});

/** As much of a job as is asked about here: a room, a two-part adhesive, no co-solvent, no fibre. */
const job = (change: (j: Job) => void = () => undefined): Job => {
  const made = {
    film: { adhesive: { record: 'pu', co_solvent: null, crosslinking: {} } },
    part: { record: 'pvc' },
    pile: null,
    workshop: { space: null },
    room: {},
    static_oven: null,
    tunnel: null,
  } as unknown as Job;
  change(made);
  return made;
};

test('a question asks each route that it concerns, one after the other, and not what was ended by hand', async () => {
  const asked: string[] = [];
  const brief = { ok: true, faults: [], variables: [], aims: { route: 'room', goal: {}, marks: [] } };
  const sweeper = {
    ask: () => Promise.resolve(brief),
    sweep: (request: { op: string }) => {
      asked.push(request.op);
      return Promise.resolve({ ok: true, faults: [] });
    },
  } as unknown as Sweeper;
  const take = (): Job => ({ ...job(), static_oven: {}, tunnel: {} }) as unknown as Job;
  const plans = new PlanState(sweeper, take);
  const asking = new Asking(plans, take);
  asking.question = 'settings';
  await asking.ask();
  expect(asked).toEqual(['window', 'window']); // no map of a room
  asked.length = 0;
  asking.question = 'overnight';
  await asking.ask();
  expect(asked).toEqual(['limits']);
  expect(asking.plan('room')?.fate).toBe('done');
  expect(asking.plan('tunnel')).toBeNull();
  asking.question = 'speed';
  expect(asking.plan('room'), 'the room says nothing of its load').toBeNull();
  asking.percentText = 'much';
  expect(asking.percent).toBeNull();
  asking.percentText = '12,5';
  expect(asking.percent).toBe(12.5);
});

test('each question has an example of its own', () => {
  expect(new Set(questionNames.map((q) => examples[q])).size).toBe(questionNames.length);
});

test('the tour is offered until it was taken or declined, and wherever nothing can be kept', () => {
  const held = new Map<string, string>();
  const store = {
    getItem: (k: string) => held.get(k) ?? null,
    setItem: (k: string, v: string) => void held.set(k, v),
  };
  const first = new HelpState(store);
  expect(first.offered).toBe(true);
  first.decline();
  expect(first.offered).toBe(false);
  expect(new HelpState(store).offered).toBe(false);
  expect(new HelpState(null).offered).toBe(true);
  const forbidden = {
    getItem: () => {
      throw new Error('forbidden');
    },
    setItem: () => {
      throw new Error('forbidden');
    },
  };
  const there = new HelpState(forbidden);
  expect(there.offered).toBe(true);
  there.decline();
  expect(there.offered).toBe(false);
});

test('published numbers are searched by any word, by subject, and say their basis', () => {
  const proof = {
    build: 'b',
    passed: 1,
    failed: 1,
    subjects: ['plates', 'jets'],
    sources: ['a book', 'a table'],
    notes: ['a reason'],
    rows: {
      subject: [0, 1],
      id: ['A-1', 'B-1'],
      quantity: ['Nu', 'h'],
      unit: ['', 'W/(m2 K)'],
      published: ['57.4', '>= 2'],
      ours: ['57.41', '1.5'],
      deviation: ['0.02 %', 'x 1.3'],
      tolerance: ['0.5 %', 'x 1.1'],
      basis: ['from memory', 'derived'],
      source: [0, 1],
      note: [-1, 0],
      pass: [true, false],
    },
    left_out: [],
  } as Proof;
  const rows = rowsOf(proof);
  expect(rows[1]).toMatchObject({
    published: '>= 2 W/(m2 K)',
    basis: 'own balance',
    note: 'a reason',
    pass: false,
  });
  expect(filtered(rows, '', 'BOOK memory').map((r) => r.id)).toEqual(['A-1']);
  expect(filtered(rows, 'jets', '').map((r) => r.id)).toEqual(['B-1']);
  expect(filtered(rows, 'jets', 'book')).toEqual([]);
  expect([...grouped(rows).keys()]).toEqual(['plates', 'jets']);
});

const told = (change: (j: Job) => void): string[] => {
  const tables = {
    adhesives: [{ id: 'pu', cautions: ['isocyanate', 'co_solvent'], adhesive: {} }],
    parts: [{ id: 'pvc', cautions: ['hydrogen_chloride', 'decomposition'], sets: [], part: {} }],
    fibres: [],
    cautions: [
      'isocyanate',
      'aziridine',
      'co_solvent',
      'fibre_dust',
      'decomposition',
      'hydrogen_chloride',
    ].map((key) => ({ key, text: key, source: '' })),
  } as unknown as Catalogue;
  return cautionsOf(job(change), tables).map((c) => c.text);
};

test('each caution stands exactly where it applies', () => {
  const { hot, always, unknown } = detail.cautions;
  const cold = told(() => undefined);
  expect(cold, 'a room, a two-part adhesive, no fibre').toEqual(['isocyanate', always]);
  const oven = told((j) => (j.tunnel = {} as never));
  expect(oven[0]).toBe(hot);
  for (const key of ['isocyanate', 'co_solvent', 'decomposition', 'hydrogen_chloride'])
    expect(oven).toContain(key);
  expect(oven.at(-1)).toBe(always);
  expect(
    told((j) => (j.film.adhesive.crosslinking = null)),
    'the crosslinker is left out',
  ).not.toContain('isocyanate');
  expect(told((j) => (j.pile = { record: '' } as never))).toContain('fibre_dust');
  const own = told((j) => (j.film.adhesive.record = ''));
  expect(own).toContain(unknown);
  expect(own).not.toContain('isocyanate');
  expect(told((j) => ((j.film.adhesive.record = ''), (j.film.adhesive.crosslinking = null)))).not.toContain(
    unknown,
  );
  const holds = (j: Job): void => {
    j.film.adhesive.record = 'other';
    j.static_oven = {} as never;
    j.film.adhesive.co_solvent = {} as never;
  };
  expect(told(holds), 'the job itself says that it holds co-solvent').toContain('co_solvent');
  expect(told((j) => (j.part.record = 'steel'))).not.toContain('decomposition');
});

test('a sheet gives way by rank, and never a danger', () => {
  const full: Counts = { note: 4, assumptions: 4, warnings: 6, rests: 3, settings: 7 };
  const least = leastOf(3);
  const gone: string[] = [];
  let now: Counts = full;
  for (let next = cut(now, least); next; next = cut(now, least)) {
    const [before, after] = [now, next];
    gone.push(lists.find((n) => after[n] < before[n]) ?? '');
    now = next;
  }
  expect(now).toEqual(least);
  expect([...new Set(gone)]).toEqual([...lists]);
  expect(gone.length).toBe(lists.reduce((sum, n) => sum + full[n] - least[n], 0));
});

test('what was cut from a shorter column comes back, settings before assumptions', () => {
  const full: Counts = { note: 4, assumptions: 4, warnings: 6, rests: 3, settings: 7 };
  const least: Counts = { note: 1, assumptions: 1, warnings: 3, rests: 1, settings: 3 };
  expect(refill(least, full, () => true)).toEqual(full);
  expect(refill(least, full, () => false)).toEqual(least);
  const room = refill(least, full, (c) => c.settings + c.rests <= 9 && c.warnings + c.note <= 5);
  expect(room).toEqual({ note: 1, assumptions: 4, warnings: 4, rests: 2, settings: 7 });
});

test('a sheet is set as large as it fits, between what can be read and what is large enough', () => {
  const found = (bound: number): number => fitted((size) => size <= bound);
  expect(found(2)).toBe(sizes.largest);
  for (const bound of [1.1, 0.97, 0.85, 0.6]) {
    expect(found(bound)).toBeLessThanOrEqual(bound);
    expect(found(bound), 'to a hundredth').toBeGreaterThan(bound - 0.01);
  }
  expect(found(0)).toBe(sizes.least);
});

test('an answer is said when it stands; between two slow keys it is not', () => {
  expect(restFrom(10_000, null)).toBe(stands);
  expect(restFrom(10_000, 10_000)).toBe(betweenKeys);
  expect(restFrom(10_000, 10_000 - betweenKeys + 2000)).toBe(2000);
  expect(restFrom(10_000, 0), 'the last key lies far back').toBe(stands);
});
