import { beforeEach, describe, expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { JobDocument } from '../../src/state/job.svelte';
import { air, cells, coat, wall } from '../fixtures/tables';

const zone = (name: string, air_temperature_K: number): object => ({
  name,
  air_temperature_K,
  wall_temperature_K: null,
  humidity: { humidity_ratio_kg_per_kg: 0.02, dew_point_K: null },
});
const start = (): Job =>
  ({
    version: 1,
    name: 'Invented',
    film: { wet_coat_kg_per_m2: 0.15 },
    pile: { length_m: 0.001 },
    room: null,
    tunnel: { zones: [zone('a', 363.15), zone('b', 393.15), zone('c', 293.15)] },
    numerics: { film_cells: 24 },
  }) as unknown as Job;

const airAt = (i: number): string => `tunnel.zones[${i}].air_temperature_K`;
const names = (job: JobDocument): unknown[] => [0, 1, 2].map((i) => job.at(`tunnel.zones[${i}].name`));

let job: JobDocument;
beforeEach(() => {
  job = new JobDocument(start());
});

describe('typing', () => {
  test('a field shows its unit; what is typed becomes SI', () => {
    expect(job.text(coat.path, coat)).toBe('150');
    job.type(coat.path, '0,2 g/m²', coat);
    expect(job.at(coat.path)).toBe(0.0002);
    expect(job.text(coat.path, coat)).toBe('0,2 g/m²');
    expect(job.revision).toBe(1);
  });

  test('a slip keeps the text and the last good value', () => {
    job.type(coat.path, 'thick', coat);
    expect(job.slips.get(coat.path)).toBe('number');
    expect(job.text(coat.path, coat)).toBe('thick');
    expect(job.at(coat.path)).toBe(0.15);
    job.type(coat.path, '', coat);
    expect(job.slips.get(coat.path)).toBe('missing');
    job.type(coat.path, '160', coat);
    expect(job.slips.size).toBe(0);
  });

  test('what may be empty may be empty', () => {
    const path = 'tunnel.zones[0].wall_temperature_K';
    job.type(path, '130', wall);
    expect(job.at(path)).toBe(403.15);
    job.type(path, '', wall);
    expect(job.at(path)).toBeNull();
    expect(job.slips.size).toBe(0);
  });

  test('a count is whole', () => {
    job.type(cells.path, '24.5', cells);
    expect(job.slips.get(cells.path)).toBe('whole');
    expect(job.at(cells.path)).toBe(24);
  });
});

describe('lists', () => {
  test('texts and slips follow their zone', () => {
    job.type(airAt(1), 'hot', air);
    job.move('tunnel.zones', 1, 0);
    expect(names(job)).toEqual(['b', 'a', 'c']);
    expect([...job.slips.keys()]).toEqual([airAt(0)]);
    expect(job.text(airAt(0), air)).toBe('hot');
    expect(job.text(airAt(1), air)).toBe('90');
    job.remove('tunnel.zones', 0);
    expect(job.slips.size).toBe(0);
    expect(job.text(airAt(0), air)).toBe('90');
  });

  test('every move is a permutation that texts agree with', () => {
    for (let from = 0; from < 3; from++) {
      for (let to = 0; to < 3; to++) {
        const other = new JobDocument(start());
        for (let i = 0; i < 3; i++) other.type(`tunnel.zones[${i}].length_m`, `text of ${'abc'[i]}`, coat);
        other.move('tunnel.zones', from, to);
        for (let i = 0; i < 3; i++) {
          const text = other.text(`tunnel.zones[${i}].length_m`, coat);
          expect(text).toBe(`text of ${String(other.at(`tunnel.zones[${i}].name`))}`);
        }
      }
    }
  });

  test('a move past the end does nothing', () => {
    job.move('tunnel.zones', 0, -1);
    job.move('tunnel.zones', 2, 3);
    expect(names(job)).toEqual(['a', 'b', 'c']);
  });

  test('a copy is a copy', () => {
    job.add('tunnel.zones', job.at('tunnel.zones[0]'));
    job.set('tunnel.zones[3].name', 'd');
    expect(job.at('tunnel.zones[0].name')).toBe('a');
  });
});

describe('blocks', () => {
  test('a block switched off and on comes back with its numbers', () => {
    job.toggle('pile', false, () => null);
    expect(job.at('pile')).toBeNull();
    job.toggle('pile', true, () => ({ length_m: 9 }));
    expect(job.at('pile.length_m')).toBe(0.001);
    job.toggle('room', true, () => ({ deadline_s: 7 }));
    expect(job.at('room.deadline_s')).toBe(7);
  });

  test('a block switched off takes its slips along', () => {
    job.type(airAt(0), 'hot', air);
    job.toggle('tunnel', false, () => null);
    expect(job.slips.size).toBe(0);
  });

  test('humidity is given by exactly one field, and remembers the others', () => {
    const path = 'tunnel.zones[0].humidity';
    job.giveBy(path, 'dew_point_K', 300);
    expect(job.at(path)).toEqual({ humidity_ratio_kg_per_kg: null, dew_point_K: 300 });
    job.giveBy(path, 'humidity_ratio_kg_per_kg', 0.5);
    expect(job.at(path)).toEqual({ humidity_ratio_kg_per_kg: 0.02, dew_point_K: null });
  });

  test('another job replaces everything', () => {
    job.type(coat.path, 'thick', coat);
    job.replace({ ...start(), name: 'Other' });
    expect(job.slips.size).toBe(0);
    expect(job.text(coat.path, coat)).toBe('150');
    expect(job.snapshot()).toEqual({ ...start(), name: 'Other' });
  });

  test('the job that was replaced comes back as it stood, texts that are no values included', () => {
    job.type(coat.path, 'thick', coat);
    job.type(airAt(1), '95', air);
    const before = job.memo();
    job.replace({ ...start(), name: 'Other' }, [{ path: airAt(0), text: 'hot', slip: 'foreign' }]);
    expect(job.text(airAt(0), air)).toBe('hot');
    expect(job.slips.get(airAt(0))).toBe('foreign');
    job.undo();
    expect(job.memo()).toEqual(before);
    expect(job.text(coat.path, coat)).toBe('thick');
    job.type(coat.path, '160', coat);
    expect(job.slips.size).toBe(0);
  });
});
