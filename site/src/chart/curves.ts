/** Histories as pictures want them: named series in units of display, cut to the times that an axis can show. */
import type { Curves, Profile, Route, Stage } from '../generated/contract';
import { detail } from '../text/detail';
import { pictures } from '../text/pictures';
import { duration, number, percent } from '../text/quantity';
import type { Reading } from './reading';
import { shownIn, unitOf, withUnit, type Quantity } from './scale';
import type { KeyEntry } from './signs';
import { numbers, times, type Table } from './table';
import { hour, linearUnit } from './time';

export interface Point {
  x: number;
  y: number;
}

export interface Series {
  name: string;
  /** Position in the palette and in the list of dash patterns: 1 to 5. */
  style: number;
  points: Point[];
}

export interface Stretch {
  /** Its place in the order of stages, from 1. */
  number: number;
  name: string;
  kind: string;
  from: number;
  to: number;
}

export interface CurvePicture {
  title: string;
  xLabel: string;
  yLabel: string;
  /** Of the numbers upwards. */
  symbol: string;
  log: boolean;
  domain: [number, number];
  /** Unit of the numbers on a linear axis; on a logarithmic one times are seconds with named ticks. */
  unit: string;
  /** Seconds in the unit of the axis. */
  second: number;
  series: Series[];
  stretches: Stretch[];
  fromZero: boolean;
}

interface Column {
  key: keyof Curves;
  name: string;
  style: number;
}

interface Kind {
  title: string;
  of: Quantity;
  /** The unit in words, where it says more than its sign. */
  yLabel?: string;
  columns: Column[];
  fromZero: boolean;
}

export type CurveKind = 'water' | 'temperature' | 'conversion';

function kindOf(kind: CurveKind): Kind {
  const t = detail.curves;
  switch (kind) {
    case 'water':
      return {
        title: t.water,
        of: 'water',
        yLabel: pictures.ofSolids({ unit: unitOf('water') }),
        fromZero: true,
        columns: [
          { key: 'mean_water_kg_per_kg', name: t.mean, style: 1 },
          { key: 'outer_water_kg_per_kg', name: t.outer, style: 2 },
          { key: 'surface_water_kg_per_kg', name: t.surface, style: 3 },
          { key: 'inner_water_kg_per_kg', name: t.inner, style: 5 },
          { key: 'equilibrium_water_kg_per_kg', name: t.equilibrium, style: 4 },
        ],
      };
    case 'conversion':
      return {
        title: t.conversion,
        of: 'share',
        fromZero: true,
        columns: [
          { key: 'mean_conversion', name: t.mean, style: 1 },
          { key: 'least_conversion', name: t.least, style: 2 },
        ],
      };
    case 'temperature':
      return {
        title: t.temperature,
        of: 'temperature',
        fromZero: false,
        columns: [
          { key: 'air_temperature_K', name: t.air, style: 4 },
          { key: 'film_temperature_K', name: t.film, style: 1 },
          { key: 'part_back_K', name: t.back, style: 2 },
        ],
      };
  }
}

export function curvePicture(route: Route, kind: CurveKind, log: boolean): CurvePicture {
  const k = kindOf(kind);
  const times = route.curves.time_s;
  const end = times.at(-1) ?? hour;
  // A linear axis shows what happens until shortly after the last mark; days of rest would press it to the edge.
  const last = Math.max(
    ...route.marks.filter((m) => m.name !== 'cured').map((m) => m.time_s ?? 0),
    route.exit?.time_s ?? 0,
    60,
  );
  const to = log ? end : Math.min(end, last * 1.25);
  const unit = linearUnit(to);
  const low = log ? firstDecade(route) : 0;
  const x = (t: number): number => (log ? t : t / unit.seconds);
  return {
    title: k.title,
    yLabel: k.yLabel ?? unitOf(k.of),
    symbol: unitOf(k.of),
    xLabel: log ? detail.curves.timeLog : detail.curves.time({ unit: unit.name }),
    log,
    unit: unit.name,
    second: log ? 1 : 1 / unit.seconds,
    domain: [x(low), x(to)],
    fromZero: k.fromZero,
    series: k.columns.map((c) => ({
      name: c.name,
      style: c.style,
      points: pointsOf(times, route.curves[c.key], low, to).map(([t, y]) => ({
        x: x(t),
        y: shownIn(y, k.of),
      })),
    })),
    stretches: stretchesOf(route.stages, low, to).map((s) => ({ ...s, from: x(s.from), to: x(s.to) })),
  };
}

/** Where a logarithmic axis begins: well before the first mark, at a round time. */
function firstDecade(route: Route): number {
  const first = Math.min(...route.marks.map((m) => m.time_s ?? Infinity).filter((t) => t > 0), hour);
  return [1, 10, 30, 60].filter((t) => t <= first / 8).at(-1) ?? 1;
}

/** The pairs inside a span of time, and one beyond it so that a line reaches the edge. */
function pointsOf(
  times: readonly number[],
  values: readonly number[],
  low: number,
  high: number,
): [number, number][] {
  const pairs: [number, number][] = [];
  for (const [i, t] of times.entries()) {
    const v = values[i];
    if (t < low || v === undefined || !Number.isFinite(v)) continue;
    pairs.push([t, v]);
    if (t >= high) break;
  }
  return pairs;
}

export function stretchesOf(stages: readonly Stage[], low: number, high: number): Stretch[] {
  return stages
    .map((s, i) => ({
      number: i + 1,
      name: s.name,
      kind: s.kind,
      from: Math.max(s.start_s, low),
      to: Math.min(s.end_s, high),
    }))
    .filter((s) => s.to > s.from);
}

/** The points that the picture shows whole, by their place in each series: those inside its span of time. */
export function stopsOf(picture: CurvePicture): number[] {
  const points = picture.series[0]?.points ?? [];
  return points.flatMap((p, i) => (p.x <= picture.domain[1] ? [i] : []));
}

/** What is read at a point. */
export function readCurve(picture: CurvePicture, point: number): Reading {
  const x = picture.series[0]?.points[point]?.x ?? NaN;
  return {
    where: duration(x / picture.second),
    values: picture.series.map((s) => ({
      name: s.name,
      value: `${number(s.points[point]?.y ?? NaN)} ${picture.symbol}`,
      sign: { kind: 'line', style: s.style },
    })),
  };
}

/** All points that are drawn, by time in seconds. */
export const curveTable = (picture: CurvePicture): Table => ({
  columns: [times(detail.curves.timeLog), ...picture.series.map((s) => numbers(s.name, picture.symbol))],
  rows: stopsOf(picture).map((i) => [
    (picture.series[0]?.points[i]?.x ?? NaN) / picture.second,
    ...picture.series.map((s) => s.points[i]?.y ?? null),
  ]),
});

/** The stages by the numbers that stand over them. */
export const stageKey = (stages: readonly Pick<Stretch, 'number' | 'name'>[]): KeyEntry[] =>
  stages.map((s) => ({ sign: { kind: 'letter', letter: String(s.number) }, words: s.name }));

export const seriesKey = (series: readonly Pick<Series, 'name' | 'style'>[]): KeyEntry[] =>
  series.map(({ name, style }) => ({ sign: { kind: 'line', style }, words: name }));

export interface ProfilePicture {
  title: string;
  xLabel: string;
  yLabel: string;
  symbol: string;
  lines: { label: string; key: string; points: Point[] }[];
}

export function profilePicture(profiles: readonly Profile[], of: 'water' | 'conversion'): ProfilePicture {
  const t = detail.curves;
  const isWater = of === 'water';
  const quantity = isWater ? 'water' : 'share';
  const symbol = unitOf(quantity);
  return {
    title: isWater ? t.profileWater : t.profileConversion,
    xLabel: isWater
      ? withUnit(t.profileWaterAxis, pictures.ofSolids({ unit: symbol }))
      : withUnit(t.profileConversionAxis, symbol),
    yLabel: t.depth,
    symbol,
    lines: profiles.map((p, i) => ({
      label: p.label,
      key: String.fromCharCode(65 + i),
      points: p.solids_share.map((s, n) => ({
        x: shownIn((isWater ? p.water_kg_per_kg[n] : p.conversion[n]) ?? NaN, quantity),
        y: s,
      })),
    })),
  };
}

/** What is read at one height: all moments at once. */
export function readProfile({ lines, symbol }: ProfilePicture, level: number): Reading {
  const height = lines[0]?.points[level]?.y ?? NaN;
  return {
    where: detail.curves.height({ share: percent(height) }),
    values: lines.map((l) => ({
      name: l.label,
      value: `${number(l.points[level]?.x ?? NaN)} ${symbol}`,
      sign: { kind: 'letter', letter: l.key },
    })),
  };
}

export const profileTable = ({ lines, symbol }: ProfilePicture): Table => ({
  columns: [
    numbers(detail.curves.depthShort, ''),
    ...lines.map((l) => numbers(`${l.key} ${l.label}`, symbol)),
  ],
  rows: (lines[0]?.points ?? []).map((p, i) => [p.y, ...lines.map((l) => l.points[i]?.x ?? null)]),
});
