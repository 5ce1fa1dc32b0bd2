/**
 * Where jobs lie between visits: one key for each job, so that two tabs do not write over each other's, and an index that
 * says which was at hand and how many changes there have been. What the browser does not take is kept until the page is closed.
 */
import type { Job } from '../generated/contract';
import { openJob, type Reader } from './jobfile';
import { isBag } from './lay';
import { getAt } from './path';
import { slipKinds, type Memo, type Slipped } from './slips';

/** The part of Storage that is needed here. */
export interface Store {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** Whether the browser took what it was given: it may be full, or forbid any keeping. */
export type Taken = 'kept' | 'full' | 'forbidden';

export class Shelf {
  readonly #store: Store | null;
  /** What the browser did not take. */
  readonly #loose = new Map<string, string>();

  constructor(store: Store | null) {
    this.#store = store;
  }

  get(key: string): string | null {
    try {
      return this.#loose.get(key) ?? this.#store?.getItem(key) ?? null;
    } catch {
      return null;
    }
  }

  put(key: string, text: string): Taken {
    try {
      if (this.#store) {
        this.#store.setItem(key, text);
        this.#loose.delete(key);
        return 'kept';
      }
    } catch (error) {
      this.#loose.set(key, text);
      return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'forbidden';
    }
    this.#loose.set(key, text);
    return 'forbidden';
  }

  /** Offers the browser once more what it did not take: there may be room by now. */
  settle(): Taken {
    const taken = [...this.#loose].map(([key, text]) => this.put(key, text));
    return taken.find((t) => t !== 'kept') ?? 'kept';
  }

  remove(key: string): void {
    this.#loose.delete(key);
    try {
      this.#store?.removeItem(key);
    } catch {
      // Whoever forbids writing has nothing to be removed.
    }
  }

  keys(): string[] {
    const keys = new Set(this.#loose.keys());
    try {
      const { length } = this.#store ?? { length: 0 };
      for (let i = 0; i < length; i++) keys.add(this.#store?.key(i) ?? '');
    } catch {
      // Forbidden even to look at.
    }
    return [...keys];
  }
}

/** Version of what is kept, apart from the version of the jobs inside it. 1 was a single job under firstKey. */
export const envelope = 2;
export const firstKey = 'drywright.job';
export const indexKey = 'drywright.jobs';
const before = `${firstKey}.`;
export const keyOf = (id: string): string => before + id;
export const idOf = (key: string): string | null =>
  key.startsWith(before) ? key.slice(before.length) : null;

/** A job as it is kept. Later ones have the higher count; the time [ms since 1970] is only shown, since clocks jump. */
export interface Held extends Memo {
  count: number;
  changed: number;
  /** The job of the last good answer, where that is another one. */
  good: Job | null;
}

export type Read = { kind: 'job'; held: Held } | { kind: 'none' | 'broken' | 'newer' };

export const write = (held: Held): string => JSON.stringify({ envelope, ...held });

/** Reads what was kept, of any version up to this one, as carefully as a file. */
export function read(text: string | null, reader: Reader): Read {
  if (text === null) return { kind: 'none' };
  const found = parse(text);
  if (!found || typeof found.envelope !== 'number') return { kind: 'broken' };
  if (found.envelope > envelope) return { kind: 'newer' };
  const opened = openJob(found.job, reader);
  if (opened.kind === 'newer') return { kind: 'newer' };
  if (opened.kind !== 'job') return { kind: 'broken' };
  const slips = Array.isArray(found.slips) ? found.slips.filter((s) => isSlipOf(s, opened.job)) : [];
  const good = openJob(found.good, reader);
  return {
    kind: 'job',
    held: {
      count: whole(found.count),
      changed: whole(found.changed),
      job: opened.job,
      slips: [...slips, ...opened.slips],
      good: good.kind === 'job' ? good.job : null,
    },
  };
}

export interface Index {
  /** The job last at hand. */
  at: string | null;
  count: number;
}

export function readIndex(shelf: Shelf): Index {
  const found = parse(shelf.get(indexKey)) ?? {};
  return { at: typeof found.at === 'string' ? found.at : null, count: whole(found.count) };
}

export interface Entry {
  id: string;
  key: string;
  /** The record as it lies there; null where it is no record at all. */
  found: Record<string, unknown> | null;
}

/** All that is kept, the last changed first. */
export function survey(shelf: Shelf): Entry[] {
  const rank = ({ found }: Entry): [number, number] => [whole(found?.count), whole(found?.changed)];
  return shelf
    .keys()
    .flatMap((key) => {
      const id = key === firstKey ? '' : idOf(key);
      return id === null ? [] : [{ id, key, found: parse(shelf.get(key)) }];
    })
    .sort((a, b) => {
      const [[countA, timeA], [countB, timeB]] = [rank(a), rank(b)];
      return countB - countA || timeB - timeA || (a.id < b.id ? -1 : 1);
    });
}

/** Brings the single job of the first version, and the one it had replaced, into keys of their own, as they stand. */
export function migrate(shelf: Shelf, mint: () => string): void {
  const found = parse(shelf.get(firstKey));
  if (found?.envelope !== 1 || !isBag(found.job)) return;
  const index = readIndex(shelf);
  const { former, ...now } = found;
  const taken = [former, now].filter(isBag).map((memo, i) => {
    const id = mint();
    index.at = id;
    return shelf.put(keyOf(id), JSON.stringify({ ...memo, envelope, count: index.count + i, changed: 0 }));
  });
  index.count += taken.length;
  taken.push(shelf.put(indexKey, JSON.stringify({ envelope, ...index })));
  if (taken.every((t) => t === 'kept')) shelf.remove(firstKey);
}

function parse(text: string | null): Record<string, unknown> | null {
  try {
    const found: unknown = JSON.parse(text ?? '');
    return isBag(found) ? found : null;
  } catch {
    return null;
  }
}

const whole = (value: unknown): number => (Number.isSafeInteger(value) ? (value as number) : 0);

const isSlipOf = (held: unknown, job: Job): held is Slipped =>
  isBag(held) &&
  typeof held.path === 'string' &&
  typeof held.text === 'string' &&
  slipKinds.some((s) => s === held.slip) &&
  getAt(job, held.path) !== undefined;

/** A store of the browser, which may be forbidden even to look at. */
export function browserStore(which: 'localStorage' | 'sessionStorage'): Store | null {
  try {
    return window[which];
  } catch {
    return null;
  }
}
