/**
 * What the browser keeps for the next visit: the job with the texts that are no values yet, the job of the last good
 * answer where that is another one, and the job that was replaced last. Whatever lies in the store is read like a file.
 */
import type { Job } from '../generated/contract';
import { openJob, type Reader } from './jobfile';
import { isBag } from './lay';
import { getAt } from './path';
import { slipKinds, type Slipped } from './slips';

/** A job as it stood in the form. */
export interface Memo {
  job: Job;
  slips: Slipped[];
}

export interface Kept {
  now: Memo;
  /** The job that the last good answer belongs to, where it is not the one in the form. */
  good: Job | null;
  /** What the last replacement (a file, the demo, the defaults) took the place of. */
  former: Memo | null;
}

const key = 'drywright.job';
/** Version of what is kept, apart from the version of the jobs inside it. */
const envelope = 1;

/** The part of Storage that is needed here. */
export interface Store {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/** Keeps the jobs for the next visit; says whether the browser took them. */
export function keep(store: Store | null, { now, good, former }: Kept): boolean {
  try {
    store?.setItem(key, JSON.stringify({ envelope, ...now, good, former }));
    return store !== null;
  } catch {
    return false;
  }
}

/** What was kept at the last visit, or null where there is nothing that can be read. */
export function kept(store: Store | null, reader: Reader): Kept | null {
  try {
    const held: unknown = JSON.parse(store?.getItem(key) ?? 'null');
    if (!isBag(held) || held.envelope !== envelope) return null;
    const now = memoOf(held, reader);
    if (!now) return null;
    return {
      now,
      good: memoOf({ job: held.good }, reader)?.job ?? null,
      former: memoOf(held.former, reader),
    };
  } catch {
    return null;
  }
}

function memoOf(held: unknown, reader: Reader): Memo | null {
  if (!isBag(held)) return null;
  const opened = openJob(held.job, reader);
  if (opened.kind !== 'job') return null;
  const slips = Array.isArray(held.slips) ? held.slips.filter((s) => isSlipOf(s, opened.job)) : [];
  return { job: opened.job, slips: [...slips, ...opened.slips] };
}

const isSlipOf = (held: unknown, job: Job): held is Slipped =>
  isBag(held) &&
  typeof held.path === 'string' &&
  typeof held.text === 'string' &&
  slipKinds.some((s) => s === held.slip) &&
  getAt(job, held.path) !== undefined;

/** The browser's store, which may be forbidden even to look at. */
export function browserStore(): Store | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
