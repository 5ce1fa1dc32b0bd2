import { describe, expect, test } from 'vitest';
import { placeNames } from '../../src/chart/beside';
import { costKey, costPicture, costTable } from '../../src/chart/costs';
import { fitPicture, fitStops, fitTable, readFit } from '../../src/chart/fits';
import { allEvents, lanePicture, laneTable } from '../../src/chart/lanes';
import { colourOf, dashOf, filledSymbol, symbolPath } from '../../src/chart/lines';
import { moistPicture, moistTable, readMoist } from '../../src/chart/moist';
import { nearest, spoken, stepBy, type Place } from '../../src/chart/reading';
import { barsOf, barTable, readBar } from '../../src/chart/spreads';
import { brief, cellText, csvOf, numbers, times, words } from '../../src/chart/table';
import { tunnelPicture, tunnelStops, tunnelTable, readTunnel } from '../../src/chart/tunnel';
import { spotOf, stopAt, windowStops, type WindowPicture } from '../../src/chart/window';
import type { MoistAir, PlanCosts, ResultFit, Spread } from '../../src/generated/contract';
import { MoistState, type Wanted } from '../../src/state/moist.svelte';
import { result, tunnel } from '../fixtures/result';

describe('tables', () => {
  const table = {
    columns: [words('what'), times('time'), numbers('water', 'g/kg')],
    rows: [
      ['a, "b"', 90, 1.5],
      ['c', 7200, null],
      ['d', 0.1 + 0.2, Infinity],
    ],
  };

  test('a file holds every row, quoted as RFC 4180 wants, without the dust of binary fractions', () => {
    expect(csvOf(table)).toBe('what,time (s),water (g/kg)\r\n"a, ""b""",90,1.5\r\nc,7200,\r\nd,0.3,\r\n');
  });

  test('where the decimal mark is a comma, cells are parted by semicolons', () => {
    expect(csvOf(table, ',').split('\r\n')[1]).toBe('"a, ""b""";90;1,5');
  });

  test('the page shows times as a workshop says them, and a dash where there is nothing', () => {
    const [what, time, water] = table.columns;
    if (!what || !time || !water) throw new Error('no columns');
    expect([cellText('a', what), cellText(90, time), cellText(7200, time)]).toEqual(['a', '90 s', '2 h']);
    expect([cellText(1.23456, water), cellText(null, water)]).toEqual(['1.23', '–']);
  });

  test('a brief table keeps both ends and is no longer than asked for', () => {
    const rows = Array.from({ length: 317 }, (_, i) => i);
    const short = brief(rows, 12);
    expect(short.length).toBe(13);
    expect([short[0], short.at(-1)]).toEqual([0, 316]);
    expect(brief([1, 2, 3], 12)).toEqual([1, 2, 3]);
  });
});

describe('reading off', () => {
  const at = (x: number, y: number): Place => ({ x, y, dots: [{ x, y }] });
  const places = [at(0, 100), at(10, 0), at(20, 90)];

  test('the nearest stop is judged along the axis, or in the plane', () => {
    expect(nearest(places, { x: 6, y: 95 }, 'x')).toBe(1);
    expect(nearest(places, { x: 6, y: 95 }, 'y')).toBe(0);
    expect(nearest(places, { x: 14, y: 80 }, 'plane')).toBe(2);
    expect(nearest([], { x: 0, y: 0 }, 'x')).toBe(-1);
  });

  test('keys go one stop, a tenth, or to the ends, and never beyond', () => {
    expect(['ArrowRight', 'ArrowLeft', 'PageUp', 'Home', 'End'].map((k) => stepBy(k, 5, 40))).toEqual([
      6, 4, 9, 0, 39,
    ]);
    expect([stepBy('ArrowLeft', 0, 40), stepBy('ArrowRight', 39, 40)]).toEqual([0, 39]);
    expect([stepBy('Tab', 5, 40), stepBy('Escape', 5, 40)]).toEqual([null, null]);
  });

  test('in a lattice a cursor stays in its row sideways and in its column up and down', () => {
    const keys = (k: string, stop: number): number | null => stepBy(k, stop, 100, 10);
    expect([
      keys('ArrowRight', 39),
      keys('ArrowLeft', 40),
      keys('ArrowUp', 95),
      keys('ArrowDown', 5),
    ]).toEqual([39, 40, 95, 5]);
    expect([keys('ArrowUp', 45), keys('Home', 45), keys('End', 45), keys('PageDown', 7)]).toEqual([
      55, 40, 49, 7,
    ]);
    for (let stop = 0; stop < 100; stop++)
      for (const k of ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown'])
        expect((keys(k, stop) ?? -1) % 10).toBe(stop % 10);
  });

  test('a reading is one sentence', () => {
    expect(spoken({ where: '2 h', values: [{ name: 'film', value: '20 °C' }] })).toBe('2 h, film 20 °C');
  });
});

describe('lines', () => {
  test('fifteen series look different, in grey as well', () => {
    const styles = Array.from({ length: 15 }, (_, i) => i + 1);
    const looks = styles.map((s) => `${colourOf(s)} ${dashOf(s)} ${symbolPath(s)} ${filledSymbol(s)}`);
    expect(new Set(looks).size).toBe(15);
    const inGrey = styles.map((s) => `${dashOf(s)} ${symbolPath(s)} ${filledSymbol(s)}`);
    expect(new Set(inGrey).size).toBe(15);
  });

  test('a name is left out where its line never runs apart from another', () => {
    const line = (name: string, y: number) => ({
      name,
      width: 30,
      points: [
        { x: 0, y },
        { x: 300, y },
      ],
    });
    const frame = { left: 0, right: 300, top: 0, bottom: 200 };
    const named = placeNames([line('a', 50), line('b', 52), line('c', 150)], frame, -2).map((n) => n.name);
    expect(named).toEqual(['c']);
    expect(placeNames([line('a', 50), line('b', 52)], frame).length).toBe(2);
  });
});

describe('pictures and their tables', () => {
  test('lanes: every event stands in the table with its time', () => {
    const picture = lanePicture(result);
    const { rows } = laneTable(picture);
    for (const e of allEvents(picture))
      expect(rows).toContainEqual([picture.lanes[e.lane]?.title, e.event, e.time, e.state]);
  });

  test('a tunnel is read from entry to exit', () => {
    const picture = tunnelPicture(tunnel);
    if (!picture) throw new Error('no tunnel');
    const stops = tunnelStops(picture);
    expect([stops[0], stops.at(-1)]).toEqual([0, picture.length]);
    expect(readTunnel(picture, picture.length).values.length).toBeGreaterThan(4);
    expect(tunnelTable(picture).rows.length).toBe(picture.positions.length);
  });

  test('costs: a route that misses its goal says so in its name and by its line', () => {
    const route = { cost_per_day: [0, 10], units: [0, 1], met: true, missing: [] };
    const costs = {
      currency: 'EUR',
      quantity_m2_per_day: [0, 5],
      asked: null,
      routes: [
        { ...route, route: 'room', met: false },
        { ...route, route: 'tunnel' },
      ],
    } as unknown as PlanCosts;
    const picture = costPicture(costs);
    expect(picture.lines.map((l) => l.name)).toEqual(['Room, misses its goal', 'Tunnel oven']);
    expect(costKey(picture).map((k) => k.sign.kind)).toEqual(['failing', 'line']);
    expect(costTable(picture).rows[1]).toEqual([5, 10, 1, 10, 1]);
  });

  test('what matters: bars stay between nothing and all', () => {
    const influence = (label: string, total: number) => ({
      variable: { label },
      share: { total, total_error: 0.05 },
      text: label,
    });
    const bars = barsOf({
      influences: [influence('coat', 1.02), influence('air', -0.01)],
    } as unknown as Spread);
    expect(bars.map((b) => b.share)).toEqual([1, 0]);
    expect(barTable(bars).rows).toEqual([
      ['coat', 100, 5],
      ['air', 0, 5],
    ]);
    expect(readBar(bars, 0).values[0]?.value).toBe('100.0 %');
  });

  test('a window is read where its cursor stands', () => {
    const axis = (low: number, high: number) => ({ label: 'a', unit: 'm', low, high });
    const picture = { x: axis(0, 8), y: axis(10, 90) } as unknown as WindowPicture;
    for (const stop of [0, 17, windowStops, windowStops * windowStops - 1])
      expect(stopAt(picture, spotOf(picture, stop))).toBe(stop);
  });

  test('trials: seven coupons get seven styles, and each point is read with its residual', () => {
    const names = Array.from({ length: 7 }, (_, i) => `coupon ${i + 1}`);
    const fit = {
      axes: { x: 'time', x_unit: 's', y: 'temperature', y_unit: 'K' },
      points: names.map((series, i) => ({
        series,
        line: i + 2,
        x: 60 * i,
        y: 300,
        predicted: 299,
        residual: 1,
        weight: i === 3 ? 0.2 : 1,
      })),
      curves: [],
    } as unknown as ResultFit;
    const picture = fitPicture(fit, 'measured less curve');
    expect(new Set(picture.series.map((s) => s.style)).size).toBe(7);
    expect(fitStops(picture).map((s) => s.dot.x)).toEqual(
      [...fitStops(picture)].map((s) => s.dot.x).sort((a, b) => a - b),
    );
    expect(picture.residualLabel).toBe('measured less curve (K)');
    const third = readFit(picture, 3);
    expect(third.values.map((v) => v.value)).toEqual(['26.9 °C', '25.9 °C', '1 K']);
    expect(third.values[0]?.sign?.kind).toBe('outlier');
    expect(fitTable(picture).rows.length).toBe(7);
  });
});

const chart: MoistAir = {
  route: 'tunnel',
  pressure_Pa: 101325,
  low_K: 273.15,
  high_K: 373.15,
  most_kg_per_kg: 0.1,
  saturation: { of: 1, temperature_K: [283.15, 293.15], humidity_ratio_kg_per_kg: [0.0076, 0.0147] },
  humidities: [{ of: 0.2, temperature_K: [293.15, 303.15], humidity_ratio_kg_per_kg: [0.0029, 0.0053] }],
  wet_bulbs: [{ of: 293.15, temperature_K: [293.15, 303.15], humidity_ratio_kg_per_kg: [0.0147, 0.0105] }],
  stages: [
    { first: 0, last: 1 },
    { first: 2, last: 3 },
  ],
  course: {
    time_s: [0, 250, 250, 400],
    air_temperature_K: [293.15, 293.15, 363.15, 363.15],
    air_humidity_ratio_kg_per_kg: [0.008, 0.008, 0.02, 0.02],
    air_relative_humidity: [0.55, 0.55, 0.045, 0.045],
    air_dew_point_K: [283.9, 283.9, 0, 298.1],
    air_wet_bulb_K: [287, 287, 309, 309],
    film_temperature_K: [292, 288, 288, 320],
    surface_humidity_ratio_kg_per_kg: [0.013, 0.011, 0.011, null],
  },
};

describe('the moist-air chart', () => {
  test('air, film, dew points and stages stand in the units of display', () => {
    const picture = moistPicture(chart, tunnel);
    expect([picture.low, picture.high, picture.most]).toEqual([0, 100, 100]);
    expect(picture.air[0]).toEqual({ x: 20, y: 8 });
    expect(picture.film.at(-1)?.y).toBe(Infinity);
    expect(picture.airs.map((a) => a.numbers)).toEqual([[1], [2]]);
    expect(picture.airs[1]?.dew?.y).toBe(20);
    expect(picture.humidities[0]?.name).toBe('20 %');
    expect(picture.stages.map((s) => s.name)).toEqual([tunnel.stages[0]?.name, tunnel.stages[1]?.name]);
  });

  test('table and read-out say steam and bone-dry air with a dash or a word, never as a number', () => {
    const { rows } = moistTable(chart, tunnel);
    expect(rows.length).toBe(4);
    expect([rows[2]?.[5], rows[3]?.[8]]).toEqual([null, null]);
    expect(spoken(readMoist(chart, tunnel, 3))).toMatch(/steam/);
    expect(spoken(readMoist(chart, tunnel, 2))).not.toMatch(/NaN|Infinity/);
  });

  test('questions do not pile up: of those that come meanwhile only the last is asked', async () => {
    const asked: string[] = [];
    const answers: (() => void)[] = [];
    const moist = new MoistState({
      ask: (request) =>
        new Promise((resolve) => {
          asked.push(request.moist_air?.route ?? '');
          answers.push(() => resolve({ ok: true, version: 1, faults: [], message: '', moist_air: chart }));
        }),
    });
    const want = (route: Wanted['route'], of: string): void =>
      moist.want({ job: {} as Wanted['job'], route, of });
    want('room', '1');
    want('room', '1');
    want('static_oven', '2');
    want('tunnel', '3');
    expect(asked).toEqual(['room']);
    answers[0]?.();
    await new Promise((resolve) => setTimeout(resolve));
    expect(asked).toEqual(['room', 'tunnel']);
    expect(moist.of).toBe('1');
    answers[1]?.();
    await new Promise((resolve) => setTimeout(resolve));
    expect(moist.of).toBe('3');
  });

  test('a core that fails is told, and can be asked again', async () => {
    let fails = true;
    const moist = new MoistState({
      ask: () =>
        fails
          ? Promise.reject(new Error('gone'))
          : Promise.resolve({ ok: true, version: 1, faults: [], message: '', moist_air: chart }),
    });
    const wanted: Wanted = { job: {} as Wanted['job'], route: 'tunnel', of: '1' };
    moist.want(wanted);
    await new Promise((resolve) => setTimeout(resolve));
    expect(moist.failed).toBe(true);
    fails = false;
    moist.again(wanted);
    await new Promise((resolve) => setTimeout(resolve));
    expect([moist.failed, moist.chart]).toEqual([false, chart]);
  });
});
