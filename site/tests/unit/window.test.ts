import { expect, test } from 'vitest';
import { areasOf, rowsOf, seatsOf, verdictAt, type WindowPicture } from '../../src/chart/window';

/** A picture of n by n settings over the unit square, judged by a function; boundaries as given. */
function pictured(
  n: number,
  judge: (x: number, y: number) => number,
  boundaries: WindowPicture['boundaries'] = [],
): WindowPicture {
  const middle = (k: number): number => (k + 0.5) / n;
  const axis = { label: '', unit: '', low: 0, high: 1 };
  return {
    x: axis,
    y: axis,
    limits: ['one', 'two'],
    columns: n,
    cells: Array.from({ length: n * n }, (_, k) => judge(middle(k % n), middle(Math.floor(k / n)))),
    boundaries,
    present: { x: 0.5, y: 0.5 },
    robust: null,
  };
}

/** The area of a path of straight lines, by the trapezium rule; holes do not occur. */
function areaOf(d: string): number {
  return d
    .split('M')
    .filter(Boolean)
    .reduce((sum, loop) => {
      const points = loop
        .replace('Z', '')
        .split('L')
        .map((p) => p.split(' ').map(Number) as [number, number]);
      const twice = points.reduce((s, [x, y], i) => {
        const [nx, ny] = points[(i + 1) % points.length] ?? [0, 0];
        return s + x * ny - nx * y;
      }, 0);
      return sum + Math.abs(twice) / 2;
    }, 0);
}

const inFrame = 1000 * 1000;
// Corners are printed to a tenth of a pixel: half of that along 4.7 thousand pixels of edge is 235 square pixels.
/** What the rim adds around the frame: half a cell on each side. */
const withRim = (n: number): number => inFrame * ((n + 1) / n) ** 2;

test('all good is one area, all bad another', () => {
  const clear = areasOf(
    pictured(6, () => -1),
    1000,
    1000,
  );
  expect(areaOf(clear.good)).toBeCloseTo(withRim(6), -3);
  expect(clear.failing).toEqual(['', '']);
  const bad = areasOf(
    pictured(6, () => 0),
    1000,
    1000,
  );
  expect(bad.good).toBe('');
  expect(areaOf(bad.failing[0] ?? '')).toBeCloseTo(withRim(6), -3);
});

test('the good area ends at the located limit, not between the cells', () => {
  // Good below y = 0.3 + 0.37 x, a slant that no lattice follows.
  const line = Array.from({ length: 5 }, (_, k) => ({ x: k / 4, y: 0.3 + (0.37 * k) / 4 }));
  const judge = (x: number, y: number): number => (y < 0.3 + 0.37 * x ? -1 : 0);
  const n = 10;
  const located = areasOf(pictured(n, judge, [line]), 1000, 1000);
  // Exact inside the frame. The rim continues the edge cells: it knows no slant, which costs up to half a cell there.
  const inner = 0.485 * inFrame;
  const rim = withRim(n) - inFrame;
  expect(Math.abs(areaOf(located.good) - inner - rim / 2)).toBeLessThan(0.01 * inFrame);
  // Every corner of the area inside the frame that is no lattice place lies on the line, to the tenth of a pixel printed.
  const corners = located.good
    .split(/[MLZ]/)
    .filter(Boolean)
    .map((p) => p.split(' ').map(Number) as [number, number])
    .filter(([x, y]) => x > 50 && x < 950 && ((x - 50) % 100 > 0.2 || (950 - y) % 100 > 0.2));
  expect(corners.length).toBeGreaterThan(8);
  for (const [x, y] of corners) expect(Math.abs(1000 - y - (300 + 0.37 * x))).toBeLessThan(0.2);
});

test('a limit that runs by a cell within its accuracy makes no bulge there', () => {
  // Through the middle of cells (0.15, 0.35), (0.25, 0.45) ...; they count as good, though the line runs just below them.
  const [exact, off] = [0.2, 0.0005];
  const line = [0, 1].map((x) => ({ x, y: x + exact - off }));
  const { good } = areasOf(
    pictured(10, (x, y) => (y <= x + exact + off ? -1 : 0), [line]),
    1000,
    1000,
  );
  const beyond = good
    .split(/[MLZ]/)
    .filter(Boolean)
    .map((p) => p.split(' ').map(Number) as [number, number])
    .filter(([x, y]) => x > 50 && x < 750 && y > 50) // the rim beyond the outer cells goes on as they are
    .map(([x, y]) => (1000 - y - x - 1000 * exact) / Math.SQRT2);
  expect(Math.max(...beyond)).toBeLessThan(1); // pixels; half a cell would be 50
});

test('bad areas reach under the good one, each to its own side', () => {
  const picture = pictured(10, (x) => (x < 0.3 ? 0 : x > 0.7 ? 1 : -1));
  const { failing } = areasOf(picture, 1000, 1000);
  // Limit 0 is the ground of everything; limit 1 covers the right half of the good area too.
  expect(areaOf(failing[0] ?? '')).toBeCloseTo(withRim(10), -3);
  expect(areaOf(failing[1] ?? '')).toBeCloseTo(withRim(10) / 2, -3);
});

test('a setting is read off by its cell; beyond the picture by the nearest', () => {
  const picture = pictured(4, (x, y) => (x > 0.5 ? 1 : y > 0.5 ? 0 : -1));
  expect(verdictAt(picture, { x: 0.1, y: 0.1 })).toBe(-1);
  expect(verdictAt(picture, { x: 0.1, y: 0.9 })).toBe(0);
  expect(verdictAt(picture, { x: 0.9, y: 0.9 })).toBe(1);
  expect(verdictAt(picture, { x: 7, y: -7 })).toBe(1);
});

test('a name sits in the middle of its area, and an area that is not there has no seat', () => {
  const [first, second] = seatsOf(pictured(9, (x) => (x < 0.34 ? 0 : -1)));
  expect(first?.x).toBeCloseTo(1.5 / 9);
  expect(first?.room).toBeCloseTo(1.5 / 9);
  expect(second).toBeNull();
});

test('the rows in words tell the good stretches and what fails beside them', () => {
  const rows = rowsOf(
    pictured(10, (x, y) => (y > 0.8 ? 1 : x < 0.3 || x > 0.6 ? 0 : -1)),
    5,
  );
  expect(rows).toHaveLength(5);
  expect(rows[0]).toMatchObject({ good: [], fails: [1] });
  expect(rows.at(-1)?.y).toBeCloseTo(0.05);
  expect(rows.at(-1)?.good[0]?.map((v) => Number(v.toFixed(3)))).toEqual([0.3, 0.6]);
  expect(rows.at(-1)?.fails).toEqual([0]);
});
