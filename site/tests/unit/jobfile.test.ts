import { expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { fileName, keepJob, keptJob, readJob, writeJob, type Keep } from '../../src/state/jobfile';

const job = { version: 1, name: 'Stands, black', film: {} } as unknown as Job;

test('a job survives the way through a file', () => {
  expect(readJob(writeJob(job), 1)).toEqual({ kind: 'job', job });
});

test('what is no job is told apart', () => {
  expect(readJob('{"version": 1', 1).kind).toBe('notJson');
  expect(readJob('[]', 1).kind).toBe('notJob');
  expect(readJob('null', 1).kind).toBe('notJob');
  expect(readJob('{"version": "1", "film": {}}', 1).kind).toBe('notJob');
  expect(readJob('{"version": 9, "film": {}}', 1)).toEqual({ kind: 'newer', version: 9 });
});

test('a file is named after its job', () => {
  expect(fileName('Stands, black')).toBe('Stands-black.drywright.json');
  expect(fileName('Prüfling 7/8 µm')).toBe('Prüfling-7-8-µm.drywright.json');
  expect(fileName('../..')).toBe('job.drywright.json');
});

class Memory implements Keep {
  items = new Map<string, string>();
  getItem = (key: string): string | null => this.items.get(key) ?? null;
  setItem = (key: string, value: string): void => void this.items.set(key, value);
}

test('the browser keeps the job, and a full, forbidden or spoilt store is no accident', () => {
  const store = new Memory();
  expect(keepJob(store, job)).toBe(true);
  expect(keptJob(store, 1)).toEqual(job);
  const full: Keep = {
    getItem: () => null,
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  };
  expect(keepJob(full, job)).toBe(false);
  expect(keepJob(null, job)).toBe(false);
  expect(keptJob(null, 1)).toBeNull();
  const spoilt = new Memory();
  for (const text of ['{', '{"envelope": 7}', '{"envelope": 1, "job": {"version": 9, "film": {}}}', 'null']) {
    spoilt.setItem('drywright.job', text);
    expect(keptJob(spoilt, 1)).toBeNull();
  }
});
