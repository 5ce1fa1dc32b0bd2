import { expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { History } from '../../src/state/history';
import { JobDocument } from '../../src/state/job.svelte';
import { draws, type Draw } from './draw';
import { air, coat } from '../fixtures/tables';

const start = (): Job =>
  ({
    version: 1,
    name: 'Invented',
    film: { wet_coat_kg_per_m2: 0.15 },
    pile: { length_m: 0.001 },
    tunnel: { zones: [{ name: 'a', air_temperature_K: 363.15 }] },
  }) as unknown as Job;
const airAt = (i: number): string => `tunnel.zones[${i}].air_temperature_K`;

test('what is typed into one field is one step until the field is left', () => {
  const job = new JobDocument(start());
  expect(job.canUndo).toBe(false);
  for (const text of ['1', '18', '180']) job.type(coat.path, text, coat);
  job.seal();
  job.type(coat.path, '181', coat);
  expect(job.undo()).toBe(coat.path);
  expect(job.at(coat.path)).toBe(0.18);
  expect(job.undo()).toBe(coat.path);
  expect(job.at(coat.path)).toBe(0.15);
  expect(job.undo()).toBeNull();
  expect([job.redo(), job.redo(), job.redo()]).toEqual([coat.path, coat.path, null]);
  expect(job.at(coat.path)).toBe(0.181);
});

test('another field between two words makes them two steps', () => {
  const job = new JobDocument(start());
  job.type(coat.path, '160', coat);
  job.type(airAt(0), '95', air);
  job.type(coat.path, '170', coat);
  expect([job.undo(), job.undo(), job.undo()]).toEqual([coat.path, airAt(0), coat.path]);
  expect(job.snapshot()).toEqual(start());
});

test('a text that is no number comes back as it stood', () => {
  const job = new JobDocument(start());
  job.type(coat.path, 'thick', coat);
  job.seal();
  job.type(coat.path, '160', coat);
  job.undo();
  expect(job.text(coat.path, coat)).toBe('thick');
  expect(job.slips.get(coat.path)).toBe('number');
});

test('what was typed and typed back is passed over', () => {
  const job = new JobDocument(start());
  job.set('name', 'Other');
  job.seal();
  job.type(coat.path, '15', coat);
  job.type(coat.path, '150', coat);
  expect(job.undo()).toBe('name');
  expect(job.snapshot()).toEqual(start());
});

test('a new change ends what could be redone', () => {
  const job = new JobDocument(start());
  job.set('name', 'Other');
  job.undo();
  expect(job.canRedo).toBe(true);
  job.set('name', 'Third');
  expect(job.canRedo).toBe(false);
});

test('a choice and what it brings along are one step', () => {
  const job = new JobDocument({ ...start(), pile: null });
  job.together('film', () => {
    job.set('name', 'Other');
    job.toggle('pile', true, () => ({ length_m: 1 }));
  });
  expect(job.undo()).toBe('film');
  expect(job.snapshot()).toEqual({ ...start(), pile: null });
});

test('each job has a history of its own', () => {
  const job = new JobDocument(start());
  job.set('name', 'Changed');
  const first = job.turn({ job: { ...start(), name: 'Second' }, slips: [] }, new History());
  expect(job.canUndo).toBe(false);
  job.set('name', 'Second, changed');
  job.turn({ job: { ...start(), name: 'Changed' }, slips: [] }, first);
  job.undo();
  expect(job.job.name).toBe('Invented');
});

test('the oldest steps go first, and no more are kept than is said', () => {
  const history = new History();
  for (let i = 0; i < 500; i++)
    history.mark('name', () => ({ job: { ...start(), name: String(i) }, slips: [] }), false);
  expect(history.past.length).toBe(200);
  expect(history.past[0]?.memo.job.name).toBe('300');
});

/** One change of any kind. */
function change(job: JobDocument, draw: Draw): void {
  const zones = (job.at('tunnel.zones') as unknown[] | undefined)?.length ?? 0;
  const changes: (() => void)[] = [
    () => job.type(coat.path, draw.pick(['150', 'thick', '', '1,8', '200']), coat),
    () => job.set('name', draw.text(6)),
    () => job.toggle('pile', draw.below(2) === 0, () => ({ length_m: 9 })),
    () => job.add('tunnel.zones', { name: draw.text(3), air_temperature_K: 300 + draw.below(100) }),
    () => zones > 0 && job.remove('tunnel.zones', draw.below(zones)),
    () => job.move('tunnel.zones', draw.below(zones + 1), draw.below(zones + 1)),
    () => zones > 0 && job.type(airAt(draw.below(zones)), draw.pick(['90', 'hot', '']), air),
    () => job.replace({ ...start(), name: draw.text(4) }),
    () => job.seal(),
  ];
  draw.pick(changes)();
}

test('property: undone to the start and redone to the end, any run of changes leaves both as they were', () => {
  for (const draw of draws(200)) {
    const job = new JobDocument(start());
    const before = job.memo();
    for (let i = draw.below(40); i > 0; i--) change(job, draw);
    const after = job.memo();
    let steps = 0;
    while (job.undo() !== null) steps++;
    expect(job.memo(), draw.name).toEqual(before);
    for (; steps > 0; steps--) expect(job.redo(), draw.name).not.toBeNull();
    expect(job.redo(), draw.name).toBeNull();
    expect(job.memo(), draw.name).toEqual(after);
  }
});
