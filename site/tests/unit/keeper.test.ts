import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { linesOf, nextTo, rename } from '../../src/jobs/list';
import { Keeper } from '../../src/state/keeper.svelte';
import { freshBlock } from '../../src/state/lay';
import { firstKey, indexKey, keyOf, read, Shelf } from '../../src/state/shelf';
import { blocks, coat, field, fields as some } from '../fixtures/tables';
import envelope1 from '../fixtures/store/envelope-1.json?raw';
import envelope2 from '../fixtures/store/envelope-2.json?raw';
import { draws } from './draw';
import { forbidden, full, Memory } from './memory';

const fields = [field('name', { kind: 'text' }), field('note', { kind: 'text' }), ...some];
const job = { ...freshBlock({ fields, blocks }, ''), version: 1 } as unknown as Job;
const reader = { fields, blocks, default: job };
const named = (name: string): Job => ({ ...structuredClone(job), name });

/** What the keeper asks of the answer. */
class Answer {
  phase: 'fresh' | 'refused' = 'fresh';
  good: Job | null = null;
  turn(good: Job | null): void {
    this.good = good;
  }
}

let minted = 0;
const mint = (): string => `id${minted++}`;

function open(
  store: Memory | null,
  tab: Memory = new Memory(),
  now = () => 1000,
  first = named('First'),
): { keeper: Keeper; answer: Answer; tab: Memory } {
  const answer = new Answer();
  const keeper = new Keeper(
    new Shelf(store),
    new Shelf(tab),
    reader,
    first,
    answer,
    (n) => `${n} (copy)`,
    now,
    mint,
  );
  return { keeper, answer, tab };
}

const names = (keeper: Keeper): string[] => linesOf(keeper.shelf, reader).map((l) => l.name);

describe('one tab', () => {
  test('the job at hand comes back as it stood, texts that are no values included', () => {
    const store = new Memory();
    const first = open(store);
    first.keeper.job.type(coat.path, 'thick', coat);
    first.answer.phase = 'refused';
    first.answer.good = named('Good');
    first.keeper.put();
    expect(first.keeper.taken).toBe('kept');
    const again = open(store);
    expect(again.keeper.id).toBe(first.keeper.id);
    expect(again.keeper.job.memo()).toEqual(first.keeper.job.memo());
    expect(again.answer.good).toEqual(named('Good'));
  });

  test('each job has a key of its own, and the list has the last changed first', () => {
    const store = new Memory();
    const { keeper } = open(store);
    keeper.put();
    keeper.add({ job: named('Second'), slips: [] });
    const second = keeper.id;
    keeper.add({ job: named('Third'), slips: [] });
    expect(names(keeper)).toEqual(['Third', 'Second', 'First']);
    expect(keeper.open(second)).toBe('job');
    expect(names(keeper), 'to open is no change').toEqual(['Third', 'Second', 'First']);
    keeper.job.set('note', 'changed');
    keeper.put();
    expect(names(keeper)).toEqual(['Second', 'Third', 'First']);
    expect(open(store).keeper.id).toBe(second);
    expect(keeper.open('nowhere')).toBe('none');
  });

  test('a clock that jumps does not change the order', () => {
    const store = new Memory();
    const times = [5e12, 1000, 9e12, 2000];
    const { keeper } = open(store, new Memory(), () => times.shift() ?? 0);
    keeper.put();
    for (const name of ['B', 'C', 'D']) keeper.add({ job: named(name), slips: [] });
    expect(names(keeper)).toEqual(['D', 'C', 'B', 'First']);
  });

  test('an index that is lost or spoilt is made up from the jobs', () => {
    for (const text of [null, '{', '{"envelope":2,"at":7,"count":"many"}']) {
      const store = new Memory();
      const { keeper } = open(store);
      keeper.put();
      keeper.add({ job: named('Second'), slips: [] });
      if (text === null) store.removeItem(indexKey);
      else store.setItem(indexKey, text);
      const again = open(store).keeper;
      expect(again.job.job.name).toBe('Second');
      again.add({ job: named('Third'), slips: [] });
      expect(names(again)).toEqual(['Third', 'Second', 'First']);
    }
  });

  test('to delete the job at hand turns to the last changed of the others, and its text brings it back', () => {
    const store = new Memory();
    const { keeper } = open(store);
    keeper.put();
    keeper.add({ job: named('Second'), slips: [] });
    const second = keeper.id;
    const text = keeper.letGo(nextTo(keeper, reader), named('Demo'));
    expect(keeper.job.job.name).toBe('First');
    expect(names(keeper)).toEqual(['First']);
    keeper.shelf.put(keyOf(second), text ?? '');
    expect(keeper.open(second)).toBe('job');
    expect(keeper.job.job.name).toBe('Second');
    keeper.shelf.remove(keyOf(keeper.id));
    keeper.keepOn();
    keeper.letGo(null, named('Demo'));
    expect(names(keeper)).toEqual(['Demo', 'First']);
  });

  test('another name changes nothing else of a record, not even what this build does not know', () => {
    const store = new Memory();
    const { keeper } = open(store);
    keeper.put();
    store.setItem(
      keyOf('x'),
      JSON.stringify({ envelope: 2, job: { ...job, later: 1 }, slips: [], extra: 2 }),
    );
    const line = linesOf(keeper.shelf, reader).find((l) => l.id === 'x');
    if (!line) throw new Error('not listed');
    rename(keeper, line, 'Other');
    expect(JSON.parse(store.getItem(keyOf('x')) ?? '')).toEqual({
      envelope: 2,
      job: { ...job, later: 1, name: 'Other' },
      slips: [],
      extra: 2,
    });
  });
});

test('turning to a job and back changes nothing of it, in whatever order its fields lie', () => {
  const store = new Memory();
  const other = [
    keyOf('other'),
    JSON.stringify({ envelope: 2, job: named('Other'), slips: [], good: null, count: 0, changed: 7 }),
  ] as const;
  const turned = Object.fromEntries(Object.entries(named('Turned')).reverse()) as unknown as Job;
  const { keeper } = open(store, new Memory(), undefined, turned);
  keeper.put();
  store.setItem(...other);
  const mine = keeper.id;
  const before = [...store.items].filter(([key]) => key !== indexKey);
  for (const id of ['other', mine, 'other']) {
    expect(keeper.open(id)).toBe('job');
    keeper.put();
  }
  expect([...store.items].filter(([key]) => key !== indexKey)).toEqual(before);
});

describe('a store that does not take it', () => {
  test('full, forbidden or absent, the page goes on with all jobs until it is closed, and says so', () => {
    for (const [refuses, word] of [
      [full, 'full'],
      [forbidden, 'forbidden'],
    ] as const) {
      const store = new Memory();
      store.refuses = refuses;
      const { keeper } = open(store);
      keeper.put();
      expect(keeper.taken).toBe(word);
      const first = keeper.id;
      keeper.add({ job: named('Second'), slips: [] });
      expect(names(keeper)).toEqual(['Second', 'First']);
      expect(keeper.open(first)).toBe('job');
      // As soon as there is room, what is written is kept again.
      store.refuses = null;
      keeper.job.set('note', 'changed');
      keeper.put();
      expect(keeper.taken).toBe('kept');
      expect(store.getItem(keyOf(first))).toContain('changed');
    }
    const { keeper } = open(null);
    keeper.put();
    expect(keeper.taken).toBe('forbidden');
    expect(names(keeper)).toEqual(['First']);
  });

  test('what a full store did not take is kept as soon as there is room, without being changed again', () => {
    const store = new Memory();
    const { keeper } = open(store);
    keeper.put();
    store.refuses = full;
    keeper.store({ job: named('Copy'), slips: [] });
    expect(keeper.taken, 'told though the job at hand is kept').toBe('full');
    expect([...store.items.values()].join()).not.toContain('Copy');
    store.refuses = null;
    keeper.put();
    expect(keeper.taken).toBe('kept');
    expect([...store.items.values()].join()).toContain('Copy');
  });

  test('what cannot be read, or is of a later version, stays as it is and is listed', () => {
    const later = JSON.stringify({ envelope: 9, job: { name: 'Later' } });
    for (const [text, state] of [
      ['{', 'broken'],
      ['{"envelope":2,"job":5}', 'broken'],
      [later, 'newer'],
      [JSON.stringify({ envelope: 2, job: { ...job, version: 9 } }), 'newer'],
    ] as const) {
      const store = new Memory();
      store.setItem(keyOf('odd'), text);
      store.setItem(indexKey, '{"envelope":2,"at":"odd","count":3}');
      const { keeper } = open(store);
      expect(keeper.unread).toBe(state);
      keeper.put();
      expect(store.getItem(keyOf('odd'))).toBe(text);
      expect(linesOf(keeper.shelf, reader).find((l) => l.id === 'odd')?.state).toBe(state);
      expect(keeper.open('odd')).toBe(state);
      expect(keeper.job.job.name).toBe('First');
    }
  });

  test('property: whatever lies in the store, the page opens and nothing of it is lost', () => {
    for (const draw of draws(300)) {
      const store = new Memory();
      const odd = [firstKey, indexKey, keyOf('a'), keyOf('b'), 'other'];
      for (const key of odd) {
        const of = draw.pick([
          () => draw.text(12),
          () => JSON.stringify(draw.json(4)),
          () =>
            JSON.stringify({ envelope: draw.pick([1, 2, 3, '1']), job: draw.json(3), count: draw.json(1) }),
          () =>
            JSON.stringify({
              envelope: 2,
              job: { ...job, film: draw.json(2) },
              slips: draw.json(2),
              good: draw.json(2),
            }),
        ]);
        store.setItem(key, of());
      }
      const before = new Map(store.items);
      const { keeper } = open(store);
      keeper.put();
      linesOf(keeper.shelf, reader);
      for (const key of [keyOf('a'), keyOf('b'), 'other']) {
        const kept = store.getItem(key);
        // A record that was opened may have been written again, as what could be read of it.
        if (key !== keyOf(keeper.id)) expect(kept, draw.name).toBe(before.get(key));
        else expect(read(kept, reader).kind, draw.name).toBe('job');
      }
    }
  });
});

describe('two tabs', () => {
  /** Two tabs with the same job at hand. */
  function two(): { a: Keeper; b: Keeper; store: Memory } {
    const store = new Memory();
    const a = open(store).keeper;
    a.put();
    return { a, b: open(store).keeper, store };
  }

  test('each has its own job at hand, and comes back to it', () => {
    const { a, store } = two();
    const tab = new Memory();
    const b = open(store, tab).keeper;
    b.add({ job: named('Of b'), slips: [] });
    a.job.set('note', 'of a');
    a.put();
    expect(a.rival).toBeNull();
    expect(names(a)).toEqual(['First', 'Of b']);
    expect(open(store, tab).keeper.id).toBe(b.id);
  });

  test('the later one is told, and writes nothing over the other', () => {
    const { a, b, store } = two();
    a.job.set('note', 'of a');
    a.put();
    b.hear(keyOf(b.id));
    expect(b.rival).toBe('changed');
    b.job.set('note', 'of b');
    b.put();
    expect(store.getItem(keyOf(a.id))).toContain('of a');
    expect(b.takeOver()).toBe(true);
    expect(b.job.job.note).toBe('of a');
    expect(b.rival).toBeNull();
    b.job.undo();
    expect(b.job.job.note).toBe('of b');
    b.put();
    expect(b.rival).toBeNull();
  });

  test('without the event of the store the later one finds out before it writes', () => {
    const { a, b } = two();
    a.job.set('note', 'of a');
    a.put();
    b.job.set('note', 'of b');
    b.put();
    expect(b.rival).toBe('changed');
    b.keepCopy();
    expect(b.id).not.toBe(a.id);
    expect(b.job.job.name).toBe('First (copy)');
    expect(names(a)).toEqual(['First (copy)', 'First']);
  });

  test('a tab that is closed undecided keeps what it has as a copy, and only if it has changed something', () => {
    const { a, b } = two();
    a.job.set('note', 'of a');
    a.put();
    b.leave();
    expect(names(a)).toEqual(['First']);
    b.job.set('note', 'of b');
    b.leave();
    expect(names(a)).toEqual(['First (copy)', 'First']);
  });

  test('a job deleted elsewhere is kept on, or let go', () => {
    const one = two();
    one.a.letGo(null, named('Demo'));
    one.b.hear(keyOf(one.b.id));
    expect(one.b.rival).toBe('deleted');
    one.b.keepOn();
    expect(names(one.b)).toEqual(['First', 'Demo']);
    const other = two();
    other.a.letGo(null, named('Demo'));
    other.b.hear(null);
    other.b.letGo(nextTo(other.b, reader), named('Demo'));
    expect(other.b.job.job.name).toBe('Demo');
    expect(names(other.b)).toEqual(['Demo']);
  });

  test('that the other has noted its last good answer is no change', () => {
    const store = new Memory();
    const a = open(store);
    a.keeper.put();
    const b = open(store).keeper;
    [a.answer.phase, a.answer.good] = ['refused', named('Good')];
    a.keeper.put();
    b.hear(keyOf(b.id));
    expect(b.rival).toBeNull();
    b.job.set('note', 'of b');
    b.put();
    expect(b.rival).toBeNull();
  });
});

describe('kept samples of every version', () => {
  test('envelope 1, the single job with the one it replaced, becomes two jobs', () => {
    const store = new Memory();
    store.setItem(firstKey, envelope1);
    const { keeper, answer } = open(store);
    expect(keeper.job.job.name).toBe('Kept sample of envelope 1');
    expect(keeper.job.at(coat.path)).toBe(0.16);
    expect(answer.good?.name).toBe('Its last good answer');
    expect(names(keeper)).toEqual(['Kept sample of envelope 1', 'Kept sample, the former job']);
    expect(store.getItem(firstKey)).toBeNull();
  });

  test('envelope 1 is left where it is as long as the new ones have no room', () => {
    const store = new Memory();
    store.setItem(firstKey, envelope1);
    store.refuses = full;
    const { keeper } = open(store);
    expect(keeper.job.job.name).toBe('Kept sample of envelope 1');
    expect(store.getItem(firstKey)).toBe(envelope1);
  });

  test('envelope 2, a job under its own key', () => {
    const store = new Memory();
    store.setItem(keyOf('sample'), envelope2);
    const { keeper } = open(store);
    expect(keeper.id).toBe('sample');
    expect(keeper.job.job.name).toBe('Kept sample of envelope 2');
    expect(keeper.job.at(coat.path)).toBe(0.17);
    expect(linesOf(keeper.shelf, reader)[0]?.changed).toBe(1764000000000);
  });
});
