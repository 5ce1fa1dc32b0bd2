/** A window of good settings, shaped for drawing: areas from the lattice of the picture, bent to the located limits. */

import { pictures } from '../text/pictures';
import { plan } from '../text/plan';
import { number } from '../text/quantity';
import type { Reading } from './reading';
import type { KeyEntry } from './signs';
import { numbers, words, type Table } from './table';
import { failureOf } from './textures';

/** One axis in the unit that is shown. */
export interface WindowAxis {
  label: string;
  unit: string;
  low: number;
  high: number;
}

export interface WindowSpot {
  x: number;
  y: number;
}

export interface WindowPicture {
  x: WindowAxis;
  y: WindowAxis;
  /** What fails somewhere, in words. */
  limits: readonly string[];
  /** Settings along each axis. */
  columns: number;
  /** Row by row from the lower left: -1 good, else the place in limits of what fails most. */
  cells: readonly number[];
  /** Lines on which a limit is just met. */
  boundaries: readonly (readonly WindowSpot[])[];
  present: WindowSpot;
  robust: WindowSpot | null;
}

export const good = -1;

/** What holds at a setting. */
export function verdictAt({ x, y, columns, cells }: WindowPicture, at: WindowSpot): number {
  const place = (v: number, axis: WindowAxis): number =>
    Math.min(columns - 1, Math.max(0, Math.floor(((v - axis.low) / (axis.high - axis.low)) * columns)));
  return cells[place(at.y, y) * columns + place(at.x, x)] ?? good;
}

/** The lattice with a rim of the same kind around it, so that areas reach the frame. Places count from the rim. */
interface Lattice {
  size: number;
  inside(i: number, j: number): boolean;
  /** Where between two neighbours an area ends: from the lower or left one, as a share of the way. */
  across(i: number, j: number): number;
  along(i: number, j: number): number;
}

const half = (): number => 0.5;

/**
 * The outline of an area as an SVG path. place turns lattice places, in which the middle of the first cell is 1, into
 * pixels.
 */
function outline(lattice: Lattice, place: (i: number, j: number) => string): string {
  let d = '';
  for (let j = 0; j + 1 < lattice.size; j++) {
    let from: number | null = null;
    for (let i = 0; i < lattice.size; i++) {
      const points = i + 1 < lattice.size ? square(lattice, i, j) : [];
      const whole =
        points.length === 4 && [0, 1].every((k) => lattice.inside(i + k, j) && lattice.inside(i + k, j + 1));
      if (whole) {
        from ??= i;
        continue;
      }
      if (from !== null) d += `M${place(from, j)}L${place(i, j)}L${place(i, j + 1)}L${place(from, j + 1)}Z`;
      from = null;
      if (points.length > 2) d += `M${points.map(([x, y]) => place(x, y)).join('L')}Z`;
    }
  }
  return d;
}

/** The part of one square of the lattice that lies in the area. */
function square(lattice: Lattice, i: number, j: number): [number, number][] {
  const corners: [number, number][] = [
    [i, j],
    [i + 1, j],
    [i + 1, j + 1],
    [i, j + 1],
  ];
  const edges: (() => [number, number])[] = [
    () => [i + lattice.across(i, j), j],
    () => [i + 1, j + lattice.along(i + 1, j)],
    () => [i + lattice.across(i, j + 1), j + 1],
    () => [i, j + lattice.along(i, j)],
  ];
  const is = corners.map(([a, b]) => lattice.inside(a, b));
  return corners.flatMap((corner, k) => [
    ...(is[k] ? [corner] : []),
    ...(is[k] !== is[(k + 1) % 4] ? [edges[k]?.() ?? corner] : []),
  ]);
}

export interface Areas {
  /** One path for each limit, to be painted in this order: the later ones cover the earlier ones. */
  failing: string[];
  /** To be painted last. */
  good: string;
}

/** The areas in pixels. Bad ones reach under the good one, whose edge is the located limit and not the lattice. */
export function areasOf(picture: WindowPicture, width: number, height: number): Areas {
  const { columns: n, cells, limits } = picture;
  const nearest = spread(cells, n);
  const clamp = (k: number): number => Math.min(n, Math.max(1, k)) - 1;
  const at = (field: readonly number[], i: number, j: number): number =>
    field[clamp(j) * n + clamp(i)] ?? good;
  const place = (i: number, j: number): string =>
    `${(((i - 0.5) / n) * width).toFixed(1)} ${(height - ((j - 0.5) / n) * height).toFixed(1)}`;
  const plain = { size: n + 2, across: half, along: half };
  const failing = limits.map((_, k) =>
    outline({ ...plain, inside: (i, j) => at(nearest, i, j) >= k }, place),
  );
  const { across, along } = crossings(picture);
  const isGood = (i: number, j: number): boolean => at(cells, i, j) === good;
  return { failing, good: outline({ size: n + 2, inside: isGood, across, along }, place) };
}

/** Gives every good cell the failure that is nearest to it. */
function spread(cells: readonly number[], n: number): number[] {
  const field = [...cells];
  let rim = field.flatMap((c, k) => (c === good ? [] : [k]));
  while (rim.length > 0) {
    const next: number[] = [];
    for (const k of rim) {
      const [i, j] = [k % n, Math.floor(k / n)];
      const beside = [i > 0 ? k - 1 : -1, i + 1 < n ? k + 1 : -1, j > 0 ? k - n : -1, j + 1 < n ? k + n : -1];
      for (const b of beside) {
        if (b < 0 || field[b] !== good) continue;
        field[b] = field[k] ?? good;
        next.push(b);
      }
    }
    rim = next;
  }
  return field;
}

/** Where the located limits cross the lines of the lattice. */
function crossings({ x, y, columns: n, boundaries }: WindowPicture): Pick<Lattice, 'across' | 'along'> {
  const found = { across: new Map<number, number>(), along: new Map<number, number>() };
  const key = (i: number, j: number): number => i * (n + 2) + j;
  const u = (p: WindowSpot): number => ((p.x - x.low) / (x.high - x.low)) * n + 0.5;
  const v = (p: WindowSpot): number => ((p.y - y.low) / (y.high - y.low)) * n + 0.5;
  for (const line of boundaries) {
    for (let k = 1; k < line.length; k++) {
      const [a, b] = [line[k - 1], line[k]];
      if (!a || !b) continue;
      for (const [j, i] of cuts(v(a), u(a), v(b), u(b))) found.across.set(key(Math.floor(i), j), i % 1);
      for (const [i, j] of cuts(u(a), v(a), u(b), v(b))) found.along.set(key(i, Math.floor(j)), j % 1);
    }
  }
  const within = (k: number): number => Math.min(n, Math.max(1, k)); // the rim goes on as its neighbour
  return {
    across: (i, j) => cutOf((k) => found.across.get(key(i + k, within(j)))),
    along: (i, j) => cutOf((k) => found.along.get(key(within(i), j + k))),
  };
}

/**
 * Where a way between neighbours is cut. A limit that runs by one of them within its accuracy may cut the way beyond it
 * instead; then that neighbour is the end.
 */
function cutOf(cutAt: (ways: number) => number | undefined): number {
  const [before, here, after] = [-1, 0, 1].map(cutAt);
  if (here !== undefined) return here;
  if (before !== undefined && before > 0.5) return 0;
  return after !== undefined && after < 0.5 ? 1 : 0.5;
}

/** The whole numbers between p0 and p1 on a straight way, and q there. */
function cuts(p0: number, q0: number, p1: number, q1: number): [number, number][] {
  const [from, to] = [Math.ceil(Math.min(p0, p1)), Math.floor(Math.max(p0, p1))];
  if (p0 === p1) return [];
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => {
    const p = from + k;
    return [p, q0 + ((q1 - q0) * (p - p0)) / (p1 - p0)];
  });
}

/** The place in each area that is farthest from its ends, as shares of the picture from the lower left, and how far. */
export interface Seat extends WindowSpot {
  room: number;
}

export function seatsOf({ columns: n, cells, limits }: WindowPicture): (Seat | null)[] {
  return limits.map((_, k) => {
    const depth = depths(cells, n, k);
    let best = -1;
    depth.forEach((d, at) => {
      if (d > 0 && d > (depth[best] ?? 0)) best = at;
    });
    if (best < 0) return null;
    return {
      x: ((best % n) + 0.5) / n,
      y: (Math.floor(best / n) + 0.5) / n,
      room: ((depth[best] ?? 1) - 0.5) / n,
    };
  });
}

/** How many cells each cell of one kind lies from the nearest other kind or the frame, counted along the axes and corners. */
function depths(cells: readonly number[], n: number, kind: number): number[] {
  const depth = cells.map((c) => (c === kind ? n : 0));
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= n || j >= n ? 0 : (depth[j * n + i] ?? 0);
  const pass = (order: number[], side: -1 | 1): void => {
    for (const k of order) {
      if (!depth[k]) continue;
      const [i, j] = [k % n, Math.floor(k / n)];
      const beside = [at(i + side, j), at(i, j + side), at(i - 1, j + side), at(i + 1, j + side)];
      depth[k] = Math.min(depth[k], 1 + Math.min(...beside));
    }
  };
  const order = cells.map((_, k) => k);
  pass(order, -1);
  pass(order.reverse(), 1);
  return depth;
}

export interface WindowRow {
  y: number;
  /** Good stretches. */
  good: [from: number, to: number][];
  /** Places in limits of what fails elsewhere on the row. */
  fails: number[];
}

/** Some rows of the picture, for reading instead of seeing, from the top. */
export function rowsOf({ x, y, columns: n, cells }: WindowPicture, count = 9): WindowRow[] {
  const edge = (k: number): number => x.low + ((x.high - x.low) * k) / n;
  return Array.from({ length: Math.min(count, n) }, (_, r) => {
    const j = Math.round(((n - 1) * (count - 1 - r)) / Math.max(1, count - 1));
    const row = cells.slice(j * n, (j + 1) * n);
    const stretches: [number, number][] = [];
    row.forEach((c, i) => {
      if (c !== good) return;
      const last = stretches.at(-1);
      if (last && last[1] === i) last[1] = i + 1;
      else stretches.push([i, i + 1]);
    });
    return {
      y: y.low + ((y.high - y.low) * (j + 0.5)) / n,
      good: stretches.map(([a, b]) => [edge(a), edge(b)]),
      fails: [...new Set(row.filter((c) => c !== good))].sort((a, b) => a - b),
    };
  });
}

/** The table of the whole picture: each setting with what holds there. */
export function windowTable({ x, y, limits, columns: n, cells }: WindowPicture): Table {
  const middle = ({ low, high }: WindowAxis, k: number): number => low + ((high - low) * (k + 0.5)) / n;
  return {
    columns: [numbers(x.label, x.unit), numbers(y.label, y.unit), words(pictures.window.verdict)],
    rows: cells.map((c, k) => [middle(x, k % n), middle(y, Math.floor(k / n)), verdictWords(limits, c)]),
  };
}

export const verdictWords = (limits: readonly string[], verdict: number): string =>
  verdict === good ? plan.window.readGood : `${verdict + 1} ${limits[verdict] ?? ''}`;

export const axisAmount = (v: number, axis: WindowAxis): string =>
  `${number(Number(v.toPrecision(4)))}${axis.unit ? ` ${axis.unit}` : ''}`;

/** Settings along each side that a cursor stops at, row by row from the lower left. */
export const windowStops = 81;

export function spotOf({ x, y }: WindowPicture, stop: number): WindowSpot {
  const along = ({ low, high }: WindowAxis, k: number): number =>
    low + ((high - low) * k) / (windowStops - 1);
  return { x: along(x, stop % windowStops), y: along(y, Math.floor(stop / windowStops)) };
}

export function stopAt({ x, y }: WindowPicture, spot: WindowSpot): number {
  const place = (v: number, { low, high }: WindowAxis): number =>
    Math.min(windowStops - 1, Math.max(0, Math.round(((v - low) / (high - low)) * (windowStops - 1))));
  return place(spot.y, y) * windowStops + place(spot.x, x);
}

export function readWindow(picture: WindowPicture, stop: number): Reading {
  const spot = spotOf(picture, stop);
  const { x, y, limits } = picture;
  return {
    where: verdictWords(limits, verdictAt(picture, spot)),
    values: [
      { name: x.label, value: axisAmount(spot.x, x) },
      { name: y.label, value: axisAmount(spot.y, y) },
    ],
  };
}

export const windowKey = ({ limits }: WindowPicture): KeyEntry[] =>
  limits.map((limit, k) => ({
    sign: { kind: 'texture', name: failureOf(k), edge: 'var(--edge)' },
    words: `${k + 1} ${limit}`,
  }));
