import { expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { keep, kept, type Kept, type Store } from '../../src/state/keep';
import { freshBlock } from '../../src/state/lay';
import { blocks, fields } from '../fixtures/tables';

const job = { ...freshBlock({ fields, blocks }, ''), version: 1 } as unknown as Job;
const reader = { fields, blocks, default: job };
const coat = 'film.wet_coat_kg_per_m2';

const coated = (wet: number): Job => {
  const made = structuredClone(job);
  made.film.wet_coat_kg_per_m2 = wet;
  return made;
};

class Memory implements Store {
  items = new Map<string, string>();
  getItem = (key: string): string | null => this.items.get(key) ?? null;
  setItem = (key: string, value: string): void => void this.items.set(key, value);
}

test('the form, the last good job and the former one come back as they stood', () => {
  const store = new Memory();
  const all: Kept = {
    now: { job: coated(7), slips: [{ path: coat, text: 'thick', slip: 'number' }] },
    good: coated(0.2),
    former: { job: coated(0.3), slips: [] },
  };
  expect(keep(store, all)).toBe(true);
  expect(kept(store, reader)).toEqual(all);
  const bare: Kept = { now: { job, slips: [] }, good: null, former: null };
  keep(store, bare);
  expect(kept(store, reader)).toEqual(bare);
});

test('what an earlier build kept is read too, and what it lacks takes its default', () => {
  const store = new Memory();
  store.setItem('drywright.job', '{"envelope": 1, "job": {"version": 1, "film": {}}}');
  expect(kept(store, reader)).toEqual({ now: { job, slips: [] }, good: null, former: null });
});

test('a full, forbidden or spoilt store is no accident', () => {
  const all: Kept = { now: { job, slips: [] }, good: null, former: null };
  const full: Store = {
    getItem: () => null,
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  };
  expect(keep(full, all)).toBe(false);
  expect(keep(null, all)).toBe(false);
  expect(kept(null, reader)).toBeNull();
  const spoilt = new Memory();
  for (const text of ['{', '{"envelope": 7}', '{"envelope": 1, "job": {"version": 9, "film": {}}}', 'null']) {
    spoilt.setItem('drywright.job', text);
    expect(kept(spoilt, reader)).toBeNull();
  }
  const slips = [{ path: 'no.such', text: 'x', slip: 'number' }, { path: coat, text: 1 }, null];
  spoilt.setItem('drywright.job', JSON.stringify({ envelope: 1, job, slips, good: 5, former: { job: 5 } }));
  expect(kept(spoilt, reader)).toEqual(all);
});
