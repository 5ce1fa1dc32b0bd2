import { describe, expect, test } from 'vitest';
import { judged, risksOf } from '../../src/chart/judged';
import { lanePicture } from '../../src/chart/lanes';
import { accountsShown } from '../../src/page/accounts';
import { amountsShown, energyTerms } from '../../src/page/amounts';
import { barsOf } from '../../src/page/limits';
import { columnsOf, placesOf } from '../../src/page/spots';
import { account, balance, limit, spotted } from '../fixtures/plant';
import { result, tunnel } from '../fixtures/result';

describe('the air', () => {
  test('of steady running is told per hour and in kilowatts', () => {
    const [zone] = accountsShown([account('Drying zone')]);
    expect(zone).toMatchObject({
      place: 'Drying zone',
      humidity: '42.7 g/kg',
      dewPoint: '37.6 °C',
      heater: '9 kW',
      share: '75.0 % / 12 kW',
      short: false,
      flammable: '',
    });
    expect(zone?.sides.map((s) => s.title)).toEqual(['Water, kg/h', 'Heat, kW']);
    expect(zone?.sides[0]?.sum).toBe('in 3.6, out 3.6, kept 0');
  });

  test('of a run is told in kilograms and kilowatt-hours', () => {
    const [oven] = accountsShown([account('Oven', { per: 'run', duty_J: 7.2e6 })]);
    expect(oven?.heater).toBe('2 kWh');
    expect(oven?.sides.map((s) => s.title)).toEqual(['Water, kg', 'Heat, kWh']);
  });

  test('what the computation leaves over is no line', () => {
    const [zone] = accountsShown([account('Drying zone')]);
    expect(zone?.sides[0]?.lines).toEqual([{ name: 'evaporated', value: '3.6' }]);
  });

  test('a side without terms is not balanced, also where the terms are left out', () => {
    const none = { ...balance(0, 0, []), terms: null as unknown as [] };
    const [zone] = accountsShown([account('Oven', { water_kg: none, heat_J: balance(0, 0, []) })]);
    expect(zone?.sides.map((s) => s.sum)).toEqual([
      'Not balanced: held as given.',
      'Not balanced: held as given.',
    ]);
  });

  test('a heater that does not reach and vapour past its usual end are called out', () => {
    const [zone] = accountsShown([account('A', { share_of_installed: 1.01, share_of_flammable_limit: 0.3 })]);
    expect([zone?.short, zone?.flammable, zone?.dangerous]).toEqual([true, '30.0 %', true]);
    const [calm] = accountsShown([account('A', { share_of_flammable_limit: 0.25 })]);
    expect([calm?.short, calm?.dangerous]).toEqual([false, false]);
  });

  test('a zone that cools asks no heater', () => {
    const [zone] = accountsShown([
      account('A', { duty_J: -6e3, installed_W: null, share_of_installed: null }),
    ]);
    expect([zone?.heater, zone?.share]).toEqual(['–', '–']);
  });

  test('a place that is there several times is numbered', () => {
    expect(accountsShown(['Wait', 'Room', 'Room'].map((p) => account(p))).map((a) => a.place)).toEqual([
      'Wait',
      'Room (1)',
      'Room (2)',
    ]);
  });
});

describe('the amounts', () => {
  test('leave out what is not known', () => {
    expect(amountsShown(tunnel.amounts).map((a) => a.value)).toEqual(['75 g/m²']);
  });

  test('are printed as the report prints them', () => {
    const known = amountsShown({
      ...tunnel.amounts,
      throughput_m2_per_h: 115.2,
      per_shift_m2: 921.6,
      cycle_s: 2100,
      energy_J_per_m2: 3.6e6,
      energy_terms_J_per_m2: [],
      cost_per_m2: 0.0419,
      currency: 'EUR',
      carbon_kg_per_m2: 0.0419,
    });
    expect(known.map((a) => a.value)).toEqual([
      '75 g/m²',
      '115 m²/h',
      '922 m²',
      '35 min',
      '1 kWh/m²',
      '0.042 EUR/m²',
      '0.0419 kg/m²',
    ]);
  });

  test('are told for one part beside the area, where its area is known', () => {
    const per_part = {
      evaporated_kg: 0.0075,
      parts_per_hour: 1152,
      parts_per_shift: null,
      energy_J: 3.6e5,
      cost: 0.0042,
      carbon_kg: null,
    };
    const known = {
      ...tunnel.amounts,
      throughput_m2_per_h: 115.2,
      energy_J_per_m2: 3.6e6,
      cost_per_m2: 0.042,
    };
    expect(amountsShown({ ...known, currency: 'EUR', per_part }).map((a) => a.part)).toEqual([
      '7.5 g',
      '1150 parts/h',
      '0.1 kWh',
      '0.004 EUR',
    ]);
    expect(amountsShown(known).map((a) => a.part)).toEqual(['', '', '', '']);
  });

  test('heat goes where it is told, in kilowatt-hours', () => {
    const terms = [
      { name: 'lost through the walls', value: 3.6e5 },
      { name: 'to warm air from neighbours', value: 0 },
    ];
    expect(energyTerms({ ...tunnel.amounts, energy_terms_J_per_m2: terms })).toEqual([
      { name: 'lost through the walls', value: '0.1 kWh/m²' },
    ]);
  });
});

describe('what is used up', () => {
  test('stands on one scale with 100 % on it, in the order given', () => {
    const { end, bars } = barsOf([limit(0.9, 'a'), limit(0.3, 'b')]);
    expect(end).toBeGreaterThan(0.9);
    expect(bars.map((b) => [b.share, b.text, b.over, b.cut])).toEqual([
      ['90.0 %', 'a', false, false],
      ['30.0 %', 'b', false, false],
    ]);
    for (const [i, share] of [0.9, 0.3].entries())
      expect((bars[i]?.length ?? 0) / end).toBeCloseTo(share, 10);
  });

  test('a share far beyond its end is cut and leaves the others readable', () => {
    const { end, bars } = barsOf([limit(157, 'far'), limit(1.2, 'over'), limit(-0.1, 'below')]);
    expect(bars.map((b) => [b.over, b.cut])).toEqual([
      [true, true],
      [true, false],
      [false, false],
    ]);
    expect(bars[0]?.length).toBe(1);
    expect(end).toBeGreaterThan(0.5);
    expect(bars[2]?.length).toBe(0);
  });
});

describe('spots', () => {
  test('stand beside the open face, the worst marked', () => {
    const places = placesOf(spotted);
    expect(places.map((p) => [p.name, p.ready, p.margin, p.late, p.worst])).toEqual([
      ['Open face', '900 s', '35 min to spare', false, false],
      ['Corner', '60 min', '10 min too late', true, true],
    ]);
    expect(places.map((p) => p.marks.length)).toEqual(
      columnsOf(spotted)
        .map(() => 5)
        .slice(0, 2),
    );
    expect(places[1]?.marks).toEqual(['500 s', '–', '–', '60 min', '–']);
  });

  test('without a worse spot the open face is the worst', () => {
    const spots = spotted.spots.map((s) => ({ ...s, worst: false }));
    expect(placesOf({ ...spotted, spots })[0]?.worst).toBe(true);
  });

  test('the lanes and the sheet show the place that decides', () => {
    expect(judged(tunnel)).toBe(tunnel);
    expect(judged(spotted).title).toBe('Tunnel oven, Corner');
    const lane = lanePicture({ ...result, routes: [spotted] }).lanes[0];
    expect(lane?.marks.map((m) => m.time)).toEqual([500, 3600, 3600]);
  });

  test('a risk at the worst spot counts, one that the open face shares does not count twice', () => {
    expect(risksOf(spotted).map((r) => r.name)).toEqual(['boiling']);
    expect(risksOf({ ...spotted, risks: spotted.spots[0]?.risks ?? [] })).toHaveLength(1);
  });
});
