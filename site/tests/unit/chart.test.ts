import { describe, expect, test } from 'vitest';
import { curvePicture, curveTable, profilePicture, stopsOf } from '../../src/chart/curves';
import { placeFlags, type Flag, type Placed } from '../../src/chart/flags';
import { bandsOf, lanePicture } from '../../src/chart/lanes';
import { linearUnit, logSpan, tickLabel, ticksWithin } from '../../src/chart/time';
import { mark, result, tunnel } from '../fixtures/result';

describe('lanes', () => {
  test('the film goes from wet to cured and never back', () => {
    expect(bandsOf(tunnel.marks, 3600)).toEqual([
      { state: 'wet', from: 0, to: 300 },
      { state: 'touch', from: 300, to: 350 },
      { state: 'dry', from: 350, to: 700 },
      { state: 'cured', from: 700, to: 3600 },
    ]);
  });

  test('marks that are never reached, or fall together, leave no empty band', () => {
    expect(bandsOf([mark('touch', 60), mark('dry_through', null), mark('cured', null)], 100)).toEqual([
      { state: 'wet', from: 0, to: 60 },
      { state: 'touch', from: 60, to: 100 },
    ]);
    const together = bandsOf([mark('touch', 60), mark('dry_through', 80), mark('cured', 80)], 100);
    expect(together.map((b) => b.state)).toEqual(['wet', 'touch', 'cured']);
    const early = bandsOf([mark('dry_through', 50), mark('touch', 60)], 100);
    expect(early.map((b) => b.state)).toEqual(['wet', 'dry']);
  });

  test('a lane holds marks in order of time, heat, exit and deadline, and the axis holds them all', () => {
    const { lanes, low, high } = lanePicture(result);
    const lane = lanes[0];
    expect(lane?.marks.map((m) => m.time)).toEqual([200, 300, 350, 400, 700, 900, 900]);
    expect(lane?.heat.map((h) => [h.from, h.to, h.cooling])).toEqual([
      [250, 600, false],
      [600, 800, true],
    ]);
    expect([lane?.exit?.time, lane?.deadline.time, lane?.end]).toEqual([800, 3000, 3600]);
    expect(low).toBeLessThan(200);
    expect(high).toBeGreaterThan(3600);
  });

  test('a mark that holds from the start is no event', () => {
    const route = { ...tunnel, marks: [mark('cool', 0), mark('touch', null)] };
    const lane = lanePicture({ ...result, routes: [route] }).lanes[0];
    expect(lane?.marks).toEqual([]);
    expect(lane?.missing).toEqual(['touch']);
  });
});

describe('labels', () => {
  const extent = (f: Flag, p: Placed): [number, number] =>
    p.side === 'right' ? [f.x, f.x + f.width] : [f.x - f.width, f.x];
  const overlap = (a: [number, number], b: [number, number]): boolean => a[0] < b[1] && b[0] < a[1];

  test('one alone stands on the first row', () => {
    expect(placeFlags([{ x: 10, width: 50 }], 400)).toEqual([{ row: 0, side: 'right' }]);
    expect(placeFlags([{ x: 390, width: 50 }], 400)).toEqual([{ row: 0, side: 'left' }]);
  });

  // A fixed sequence (a linear congruence, Knuth's MMIX multiplier cut to 31 bits) so that a failure can be repeated.
  test('no two labels ever cover each other, and no stem runs through a label that flies right', () => {
    let seed = 1;
    const random = (): number => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
    for (let round = 0; round < 500; round++) {
      const flags = Array.from({ length: 1 + Math.floor(random() * 8) }, () => ({
        x: random() * 320,
        width: 40 + random() * 80,
      }));
      const placed = placeFlags(flags, 340);
      flags.forEach((a, i) => {
        const pa = placed[i] as Placed;
        flags.forEach((b, j) => {
          const pb = placed[j] as Placed;
          if (i < j && pa.row === pb.row) expect(overlap(extent(a, pa), extent(b, pb))).toBe(false);
          if (i !== j && pa.side === 'right' && pb.side === 'right' && pb.row > pa.row) {
            const [from, to] = extent(a, pa);
            expect(b.x > from && b.x < to).toBe(false);
          }
        });
      });
    }
  });
});

describe('curves', () => {
  test('on a logarithmic axis time is seconds and never zero', () => {
    const picture = curvePicture(tunnel, 'water', true);
    expect(picture.domain[0]).toBeGreaterThan(0);
    expect(picture.series.map((s) => s.points.length)).toEqual([8, 8, 8, 8, 8]);
    expect(picture.series[0]?.points[0]).toEqual({ x: 30, y: 877.5 });
  });

  test('on a linear axis time is in a workshop unit and ends after the last mark', () => {
    const picture = curvePicture(tunnel, 'temperature', false);
    expect(picture.unit).toBe('min');
    expect(picture.domain[1]).toBeCloseTo((900 * 1.25) / 60, 10);
    expect(picture.series[1]?.points[0]).toEqual({ x: 0, y: 20 });
    expect(picture.stretches.map((s) => [s.number, s.name])).toEqual([
      [1, 'Wait'],
      [2, 'Drying zone'],
      [3, 'Cooling zone'],
      [4, 'Workshop'],
    ]);
    const last = picture.series[0]?.points.at(-1)?.x ?? 0;
    expect(last).toBeGreaterThanOrEqual(picture.domain[1]);
  });

  test('the table tells the same values, by time in seconds', () => {
    const picture = curvePicture(tunnel, 'conversion', false);
    const { columns, rows } = curveTable(picture);
    expect(columns.map((c) => c.unit)).toEqual(['s', '%', '%']);
    const stops = stopsOf(picture);
    expect(rows.length).toBe(stops.length);
    stops.forEach((stop, i) => {
      expect(rows[i]?.[0]).toBeCloseTo((picture.series[0]?.points[stop]?.x ?? NaN) * 60, 9);
      expect(rows[i]?.[1]).toBe(picture.series[0]?.points[stop]?.y);
    });
  });

  test('a profile goes from the part to the surface', () => {
    const line = profilePicture(tunnel.profiles, 'water').lines[0];
    expect(line).toMatchObject({ key: 'A', label: 'touch' });
    expect(line?.points).toEqual([
      { x: 200, y: 0 },
      { x: 50, y: 1 },
    ]);
  });
});

describe('the axis of time', () => {
  test('has the ticks of the trade, and a name for each', () => {
    const ticks = ticksWithin(10, 7 * 86400);
    expect(ticks.map(tickLabel)).toEqual(['10 s', '1 min', '10 min', '1 h', '8 h', '1 d', '7 d']);
  });
  test('starts before the first event and never at zero', () => {
    for (const first of [0.5, 5, 47, 300, 5000]) {
      const [low, high] = logSpan([first, 1e5], 1e6);
      expect(low).toBeGreaterThan(0);
      expect(low).toBeLessThanOrEqual(first);
      expect(high).toBeGreaterThan(1e6);
    }
  });
  test('a linear axis is read in the unit that suits its length', () => {
    expect([100, 1000, 50000, 1e6].map((t) => linearUnit(t).name)).toEqual(['s', 'min', 'h', 'd']);
  });
});
