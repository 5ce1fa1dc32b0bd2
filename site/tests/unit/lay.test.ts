import { describe, expect, test } from 'vitest';
import { freshBlock, lay, type Tables } from '../../src/state/lay';
import { blocks, fields } from '../fixtures/tables';

const tables: Tables = { fields, blocks };
const zone = {
  name: 'Zone',
  length_m: 5,
  air_temperature_K: 393.15,
  humidity: { humidity_ratio_kg_per_kg: 0.02, dew_point_K: null },
  wall_temperature_K: null,
};

test('a fresh block is made of defaults, with what is absent absent', () => {
  expect(freshBlock(tables, 'tunnel')).toEqual({ line_speed_m_per_s: 5, zones: [zone, zone] });
  expect(freshBlock(tables, 'tunnel.zones[]')).toEqual(zone);
  expect(freshBlock(tables, 'film.adhesive.crosslinking')).toEqual({
    order: 5,
    schedule: { pairs: [{ time_s: 5 }] },
    autocatalysis: null,
  });
});

describe('a document laid over the defaults', () => {
  const fresh = freshBlock(tables, '');

  test('a whole one stays as it is, and an empty one is the defaults', () => {
    expect(lay(tables, '', fresh)).toEqual({ value: fresh, slips: [], left: [] });
    expect(lay(tables, '', {}).value).toEqual(fresh);
  });

  test('what it gives is taken, right or wrong; what it leaves out takes its default', () => {
    const { value, slips, left } = lay(tables, '', {
      film: { wet_coat_kg_per_m2: -7 },
      tunnel: { zones: [{ air_temperature_K: 1e6 }] },
    });
    expect(value.film).toMatchObject({ wet_coat_kg_per_m2: -7, adhesive: { solids_fraction: 0.5 } });
    expect(value.tunnel).toEqual({ line_speed_m_per_s: 5, zones: [{ ...zone, air_temperature_K: 1e6 }] });
    expect([slips, left]).toEqual([[], []]);
  });

  test('a block or number that may be null stays null', () => {
    const { value, left } = lay(tables, '', {
      tunnel: null,
      film: { adhesive: { crosslinking: null } },
    });
    expect(value.tunnel).toBeNull();
    expect(value.film).toMatchObject({ adhesive: { crosslinking: null } });
    expect(left).toEqual([]);
  });

  test('in place of a number anything else is a text to be mended, even where it reads like a number', () => {
    const held = (wet: unknown): unknown => lay(tables, 'film', { wet_coat_kg_per_m2: wet }).slips;
    const path = 'film.wet_coat_kg_per_m2';
    expect(held('0.2')).toEqual([{ path, text: '0.2', slip: 'foreign' }]);
    expect(held(null)).toEqual([{ path, text: '', slip: 'missing' }]);
    expect(held([1])).toEqual([{ path, text: '[1]', slip: 'foreign' }]);
    expect(held(JSON.parse('1e999'))).toEqual([{ path, text: 'Infinity', slip: 'foreign' }]);
    const zones = lay(tables, 'tunnel', { zones: [zone, { ...zone, length_m: 'long' }] });
    expect(zones.slips).toEqual([{ path: 'tunnel.zones[1].length_m', text: 'long', slip: 'foreign' }]);
    expect(zones.value.zones).toEqual([zone, zone]);
  });

  test('of a one-of block the given field stands alone', () => {
    const humid = (humidity: unknown): unknown =>
      (lay(tables, 'tunnel.zones[]', { humidity }).value as typeof zone).humidity;
    expect(humid({ dew_point_K: 280 })).toEqual({ humidity_ratio_kg_per_kg: null, dew_point_K: 280 });
    expect(humid({})).toEqual({ humidity_ratio_kg_per_kg: null, dew_point_K: null });
    expect(humid(undefined)).toEqual(zone.humidity);
  });

  test('what has no place is left out and listed', () => {
    const { value, left } = lay(tables, '', {
      film: 'none',
      tunnel: { zones: [null, zone, ...Array.from({ length: 12 }, () => zone)], color: 1 },
      numerics: { film_cells: 20, __proto__x: 3 },
      extra: {},
    });
    expect(left.toSorted()).toEqual([
      'extra',
      'film',
      'numerics.__proto__x',
      'tunnel.color',
      'tunnel.zones[0]',
      'tunnel.zones[12]',
      'tunnel.zones[13]',
    ]);
    expect(value).toEqual({
      ...fresh,
      tunnel: { line_speed_m_per_s: 5, zones: Array.from({ length: 11 }, () => zone) },
      numerics: { film_cells: 20 },
    });
  });

  // A fixed sequence (a linear congruence, Knuth's MMIX multiplier cut to 31 bits) so that a failure can be repeated.
  test('whatever stands in it, the result has the shape of a job', () => {
    let seed = 7;
    const random = (): number => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
    const junk = [null, true, 'x', -1, [], {}, [null], { a: 1 }, Infinity];
    const spoil = (node: unknown): unknown => {
      if (random() < 0.15) return junk[Math.floor(random() * junk.length)];
      if (Array.isArray(node)) return node.map(spoil);
      if (typeof node !== 'object' || node === null) return node;
      return Object.fromEntries(
        Object.entries(node).flatMap(([k, v]) => (random() < 0.1 ? [] : [[k, spoil(v)]])),
      );
    };
    for (let round = 0; round < 300; round++) {
      const spoilt = spoil(fresh);
      const laid = lay(tables, '', (typeof spoilt === 'object' ? (spoilt ?? {}) : {}) as object as never);
      // Laid over once more nothing changes: every member is there, of its type, and none that is not known.
      expect(lay(tables, '', laid.value)).toEqual({ value: laid.value, slips: [], left: [] });
    }
  });
});
