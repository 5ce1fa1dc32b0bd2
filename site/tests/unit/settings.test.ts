/** What of a job the printed sheet shows, with the field table of the core and its worked examples. */
import { expect, test } from 'vitest';
import describeAnswer from '../../../testdata/requests/answers/describe.json';
import line from '../../../testdata/requests/predict-line.json';
import sleeves from '../../../testdata/requests/predict-sleeves.json';
import type { Catalogue, Job } from '../../src/generated/contract';
import { settingsOf, type Setting } from '../../src/page/settings';
import { indexFields } from '../../src/state/faults';

const catalogue = describeAnswer.catalogue as unknown as Catalogue;
const of = (job: unknown): Setting[] => settingsOf(job as Job, catalogue, indexFields(catalogue.fields));
const find = (job: unknown, title: string): Setting | undefined => of(job).find((s) => s.title === title);
const facts = (s: Setting | undefined): Record<string, string> =>
  Object.fromEntries(s?.facts.map((f) => [f.label, f.value]) ?? []);

test('coat and ovens come first; a route that the job lacks is left out', () => {
  expect(of(sleeves.job).map((s) => s.title)[0]).toBe('Film');
  expect(of(line.job).map((s) => s.title)).not.toContain('Route: room, overnight');
});

test('values stand in the units of the fields, choices in words', () => {
  expect(facts(find(sleeves.job, 'Film'))['Wet coat']).toMatch(/^155\s?g\/m²$/);
  expect(facts(find(sleeves.job, 'Part'))['How the coated face lies']).toBe('upright');
});

test('a list is a table with a column for each entry; what is alike in all of them is told once', () => {
  const [zones] = find(line.job, 'Route: tunnel oven')?.grids ?? [];
  const { zones: own } = line.job.tunnel;
  expect(zones?.heads).toEqual(own.map((z, i) => `${i + 1} ${z.name}`));
  expect(zones?.rows.find((r) => r.label === 'Length of the zone')?.values.map(parseFloat)).toEqual(
    own.map((z) => z.length_m),
  );
  expect(zones?.alike.map((f) => f.label)).toContain('Nozzles: pitch');
  for (const row of zones?.rows ?? []) expect(new Set(row.values).size, row.label).toBeGreaterThan(1);
});

test('what only one entry has leaves a dash in the others', () => {
  const job = structuredClone(sleeves.job);
  Object.assign(job.tunnel.zones[1]?.transfer ?? {}, { kind: 'natural' });
  const [zones] = find(job, 'Route: tunnel oven')?.grids ?? [];
  expect(zones?.rows.find((r) => r.label === 'Heat transfer coefficient')?.values[1]).toBe('–');
});

test('one state of the air is told among the facts, without its time', () => {
  const job = structuredClone(sleeves.job);
  job.workshop.air.length = 1;
  const workshop = find(job, 'Workshop');
  expect(workshop?.grids).toEqual([]);
  expect(facts(workshop)['Air temperature']).toMatch(/^20\s?°C$/);
  expect(facts(workshop)['Time from spraying']).toBeUndefined();
});
