import { expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { fileName, readJob, writeJob, type Reader } from '../../src/state/jobfile';
import { freshBlock } from '../../src/state/lay';
import { blocks, fields } from '../fixtures/tables';

const job = { ...freshBlock({ fields, blocks }, ''), version: 1 } as unknown as Job;
const reader: Reader = { fields, blocks, default: job };

test('a job survives the way through a file', () => {
  expect(readJob(writeJob(job), reader)).toEqual({ kind: 'job', job, slips: [], left: [] });
});

test('what is no job is told apart', () => {
  const kind = (text: string): string => readJob(text, reader).kind;
  expect(kind('{"version": 1')).toBe('notJson');
  expect(kind('[]')).toBe('notJob');
  expect(kind('null')).toBe('notJob');
  expect(kind('{"version": "1", "film": {}}')).toBe('notJob');
  expect(kind('{"version": 0.5, "film": {}}')).toBe('notJob');
  expect(kind('{"version": 1}')).toBe('notJob');
  expect(kind(`{"version": 1, "film": {}, "note": "${'x'.repeat(3 << 20)}"}`)).toBe('large');
  const deep = `${'['.repeat(5e5)}${']'.repeat(5e5)}`;
  expect(kind(`{"version": 1, "film": {"wet_coat_kg_per_m2": ${deep}}}`)).toBe('notJob');
  expect(readJob('{"version": 9, "film": 1}', reader).kind).toBe('notJob');
  expect(readJob('{"version": 9, "film": {}}', reader)).toEqual({ kind: 'newer', version: 9 });
});

test('a job with bad values is opened, with the texts that must be mended', () => {
  const opened = readJob('{"version": 1, "film": {"wet_coat_kg_per_m2": "thick"}, "colour": 1}', reader);
  expect(opened).toEqual({
    kind: 'job',
    job,
    slips: [{ path: 'film.wet_coat_kg_per_m2', text: 'thick', slip: 'foreign' }],
    left: ['colour'],
  });
});

test('a file is named after its job', () => {
  expect(fileName('Stands, black')).toBe('Stands-black.drywright.json');
  expect(fileName('Prüfling 7/8 µm')).toBe('Prüfling-7-8-µm.drywright.json');
  expect(fileName('../..')).toBe('job.drywright.json');
});
