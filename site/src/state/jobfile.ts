/**
 * Jobs as text: in a file and in the browser's store. A job from outside is foreign matter: only its outer shape is
 * looked at here, its values are judged by the core.
 */
import type { Job } from '../generated/contract';

export type Opened =
  { kind: 'job'; job: Job } | { kind: 'notJson' } | { kind: 'notJob' } | { kind: 'newer'; version: number };

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a job document that this build, which writes documents of `version`, can read. */
export function readJob(text: string, version: number): Opened {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { kind: 'notJson' };
  }
  if (!isObject(value) || typeof value.version !== 'number' || !isObject(value.film))
    return { kind: 'notJob' };
  if (value.version > version) return { kind: 'newer', version: value.version };
  return { kind: 'job', job: value as unknown as Job };
}

export const writeJob = (job: Job): string => `${JSON.stringify(job, null, 2)}\n`;

/** A file name from a job's name: letters and figures of any script, the rest as hyphens. */
export function fileName(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${plain || 'job'}.drywright.json`;
}

const key = 'drywright.job';
/** Version of what is kept, apart from the version of the job inside it. */
const envelope = 1;

export interface Keep {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/** Keeps the job for the next visit; says whether the browser took it. */
export function keepJob(store: Keep | null, job: Job): boolean {
  try {
    store?.setItem(key, JSON.stringify({ envelope, job }));
    return store !== null;
  } catch {
    return false;
  }
}

/** The job of the last visit, or null where there is none that can be read. */
export function keptJob(store: Keep | null, version: number): Job | null {
  try {
    const kept: unknown = JSON.parse(store?.getItem(key) ?? 'null');
    if (!isObject(kept) || kept.envelope !== envelope) return null;
    const opened = readJob(JSON.stringify(kept.job), version);
    return opened.kind === 'job' ? opened.job : null;
  } catch {
    return null;
  }
}

/** The browser's store, which may be forbidden even to look at. */
export function browserStore(): Keep | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
