import { describe, expect, test } from 'vitest';
import { digestOf, entryDigest } from '../../src/form/digest';
import { fold, nodesOf } from '../../src/form/layout';
import { displayOf } from '../../src/form/prices';
import { companionsOf, isUsed } from '../../src/form/use';
import { getAt } from '../../src/state/path';
import { block, blocks, field, fields } from '../fixtures/tables';

const job = {
  tunnel: {
    zones: [{ length_m: 4, air_temperature_K: 333.15, transfer: { kind: 'slot_nozzles', nozzles: null } }],
  },
  space: { heat_balance: false, pressure_Pa: null },
};
const at = (path: string): unknown => getAt(job, path);
const asks = { path: 'kind', in: ['slot_nozzles', 'round_nozzles'] };

describe('a field or block counts', () => {
  test('always, where it hangs on nothing', () => {
    expect(isUsed(null, 'space.volume_m3', at)).toBe(true);
  });

  test('while what it hangs on, beside it, is one of the values that ask for it', () => {
    expect(isUsed(asks, 'tunnel.zones[0].transfer.nozzles', at)).toBe(true);
    expect(isUsed({ ...asks, in: ['given'] }, 'tunnel.zones[0].transfer.nozzles', at)).toBe(false);
    expect(isUsed({ path: 'heat_balance', in: ['true'] }, 'space.heating', at)).toBe(false);
    expect(isUsed({ path: 'pressure_Pa', in: ['null'] }, 'space.exit_velocity', at)).toBe(true);
  });
});

describe('a choice brings along', () => {
  const nozzles = block('tunnel.zones[].transfer.nozzles', 'Nozzles', {
    optional: true,
    absent: true,
    used_when: asks,
  });
  const fan = block('tunnel.zones[].transfer.fan', 'Fan', { optional: true, absent: true, used_when: asks });

  test('the block that it cannot do without, and no other', () => {
    expect(companionsOf('tunnel.zones[0].transfer.kind', [fan, nozzles], at)).toEqual([
      'tunnel.zones[0].transfer.nozzles',
    ]);
  });

  test('nothing that is there already or is not asked for', () => {
    const there = (path: string): unknown => (path.endsWith('nozzles') ? {} : at(path));
    expect(companionsOf('tunnel.zones[0].transfer.kind', [nozzles], there)).toEqual([]);
    const other = { ...nozzles, used_when: { ...asks, in: ['given'] } };
    expect(companionsOf('tunnel.zones[0].transfer.kind', [other], at)).toEqual([]);
  });
});

describe('entries of a list', () => {
  const zone = nodesOf(fields, blocks, 'tunnel').find((n) => n.kind === 'list');

  test('fold what few people change', () => {
    const { front, back } = fold(zone?.kind === 'list' ? zone.nodes : []);
    expect(front.map((n) => n.template)).toContain('tunnel.zones[].air_temperature_K');
    expect(back.map((n) => n.template)).toEqual(['tunnel.zones[].wall_temperature_K']);
  });

  test('closed say their first two numbers', () => {
    expect(entryDigest(job, zone?.kind === 'list' ? zone.nodes : [], 0)).toBe('4\u202fm · 60\u202f°C');
  });

  test('wherever air moves, how and how fast stands in front', () => {
    const movement = nodesOf(
      ['kind', 'velocity_m_per_s', 'tripped'].map((n) => field(`workshop.transfer.${n}`)),
      [block('workshop.transfer', 'Air movement')],
      'workshop',
    )[0];
    const { front, back } = fold(movement?.kind === 'block' ? movement.nodes : []);
    expect(front.map((n) => n.template)).toEqual([
      'workshop.transfer.kind',
      'workshop.transfer.velocity_m_per_s',
    ]);
    expect(back.map((n) => n.template)).toEqual(['workshop.transfer.tripped']);
  });
});

describe('a closed section says', () => {
  const wage = field('costs.wage_per_h', {
    label: 'Cost of an hour of work',
    display: { dimension: 'price', symbol: '1/h', factor: 3600, offset: 0, digits: 3 },
  });
  const days = field('costs.days_per_year', { label: 'Working days a year' });
  const priced = { costs: { wage_per_h: 32 / 3600, days_per_year: 230 }, tariffs: { currency: 'EUR' } };

  test('of each number what it is, prices in the currency of the job', () => {
    const known = new Map([wage, days].map((f) => [f.path, f]));
    expect(digestOf(priced, known, 'costs')).toBe(
      'Cost of an hour of work\u00a032\u202fEUR/h · Working days a year\u00a0230',
    );
  });

  test('a price as so many in an hour while there is no currency, and nothing else in a currency', () => {
    expect(displayOf(wage, { ...priced, tariffs: null }).symbol).toBe('1/h');
    expect(displayOf({ ...wage, path: 'room.air_changes_per_s' }, priced).symbol).toBe('1/h');
  });
});
