/** What the tunnel picture shows, drawn from the answer alone: zones, histories over the way, marks, exit. */
import type { Curves, Mark, MarkName, Route, Stage } from '../generated/contract';
import { detail } from '../text/detail';
import { duration, number } from '../text/quantity';
import type { Reading as Read } from './reading';
import { amount, shownIn, unitOf } from './scale';
import { numbers, times, words, type Column, type Table } from './table';

export type ZoneKind = 'heated' | 'cooling' | 'infrared';

export interface TunnelZone {
  number: number;
  name: string;
  kind: ZoneKind;
  /** Along the tunnel [m]. */
  from: number;
  to: number;
  /** Of its air [K] and [kg/kg]. */
  temperature: number;
  humidity: number;
}

export interface TunnelMark {
  name: MarkName;
  label: string;
  text: string;
  /** Along the tunnel [m]. */
  at: number;
}

export interface TunnelLine {
  name: string;
  /** As it stands beside the line, in a strip that says the rest. */
  label: string;
  style: number;
  /** In the unit of its strip, one for each position. */
  values: number[];
}

export interface TunnelPicture {
  zones: TunnelZone[];
  /** Of the whole tunnel [m], and the time to pass it [s]. */
  length: number;
  passing: number;
  /** Where the histories have values [m], rising; twice at a border where the air jumps. */
  positions: number[];
  temperatures: TunnelLine[];
  water: TunnelLine[];
  /** Null where nothing crosslinks. */
  conversion: TunnelLine | null;
  marks: TunnelMark[];
  before: OutsideMark[];
  after: OutsideMark[];
  never: string[];
  exit: { text: string; film: number; water: number; conversion: number } | null;
  /** Times [s] from spraying that belong to a place, and back. */
  timeAt(position: number): number;
  placeAt(time: number): number;
  entered: number;
}

export interface OutsideMark {
  label: string;
  text: string;
}

/** The marks that the picture shows; open time and readiness are told elsewhere. */
const shown: readonly MarkName[] = ['touch', 'tack_free', 'dry_through', 'cured', 'cool'];

/** A stage of the tunnel. An answer that says which zones shine says it in `infrared`. */
type ZoneStage = Stage & { position_m: number; length_m: number; infrared?: boolean };
const isZone = (s: Stage): s is ZoneStage => s.position_m !== null && s.length_m !== null && s.length_m > 0;

/** The picture of a route, or null where there is no tunnel to draw. */
export function tunnelPicture(route: Route): TunnelPicture | null {
  const stages = route.stages.filter(isZone);
  const [first, last] = [stages[0], stages.at(-1)];
  if (!first || !last) return null;
  const [entered, left] = [first.start_s, last.end_s];
  const times = timesBetween(route.curves.time_s, entered, left);
  const placeAt = (t: number): number => {
    const zone = stages.find((s) => t <= s.end_s) ?? last;
    return zone.position_m + (zone.length_m * (t - zone.start_s)) / (zone.end_s - zone.start_s);
  };
  const timeAt = (position: number): number => {
    const zone = stages.find((s) => position <= s.position_m + s.length_m) ?? last;
    return zone.start_s + ((zone.end_s - zone.start_s) * (position - zone.position_m)) / zone.length_m;
  };
  const line = (label: string, style: number, of: keyof Curves, to: (si: number) => number): TunnelLine => ({
    name: label,
    label,
    style,
    values: times.map((t, i) => to(valueAt(route.curves, of, t, sideOf(times, i)))),
  });
  const names = detail.tunnel.lines;
  const celsius = (kelvin: number): number => shownIn(kelvin, 'temperature');
  const grams = (ratio: number): number => shownIn(ratio, 'water');
  const cures = route.curves.mean_conversion.some((c) => c > 0);
  const marks = route.marks.filter((m) => shown.includes(m.name));
  const reached = marks.filter((m): m is Mark & { time_s: number } => m.time_s !== null && m.time_s > 0);
  const byTime = reached.toSorted((a, b) => a.time_s - b.time_s);
  return {
    zones: stages.map((s, i) => zoneOf(s, i, route.curves)),
    length: last.position_m + last.length_m,
    passing: left - entered,
    positions: times.map(placeAt),
    temperatures: [
      line(names.air, 4, 'air_temperature_K', celsius),
      line(names.film, 1, 'film_temperature_K', celsius),
      line(names.back, 2, 'part_back_K', celsius),
    ],
    water: [
      line(names.mean, 1, 'mean_water_kg_per_kg', grams),
      line(names.outer, 2, 'outer_water_kg_per_kg', grams),
    ].map((l) => ({ ...l, name: detail.tunnel.waterOf({ line: l.label }) })),
    conversion: cures ? line(names.conversion, 3, 'mean_conversion', (x) => shownIn(x, 'share')) : null,
    marks: byTime
      .filter((m) => m.time_s >= entered && m.time_s <= left)
      .map((m) => ({ name: m.name, label: m.label, text: m.text, at: placeAt(m.time_s) })),
    before: byTime.filter((m) => m.time_s < entered),
    after: byTime.filter((m) => m.time_s > left),
    never: marks.filter((m) => m.time_s === null).map((m) => m.label),
    exit: route.exit && {
      text: route.exit.text,
      film: route.exit.state.film_temperature_K,
      water: route.exit.state.mean_water_kg_per_kg,
      conversion: route.exit.state.mean_conversion,
    },
    timeAt,
    placeAt,
    entered,
  };
}

function zoneOf(stage: ZoneStage, index: number, curves: Curves): TunnelZone {
  const middle = (stage.start_s + stage.end_s) / 2;
  return {
    number: index + 1,
    name: stage.name,
    kind: stage.kind === 'cooling' ? 'cooling' : stage.infrared ? 'infrared' : 'heated',
    from: stage.position_m,
    to: stage.position_m + stage.length_m,
    temperature: valueAt(curves, 'air_temperature_K', middle, 'after'),
    humidity: valueAt(curves, 'air_humidity_ratio_kg_per_kg', middle, 'after'),
  };
}

/** The times of a history inside a span, with its ends. A time that stands twice stays so: there the air jumps. */
function timesBetween(times: readonly number[], from: number, to: number): number[] {
  return [from, ...times.filter((t) => t > from && t < to), to];
}

/** On which side of a jump a value is wanted. */
type SideOfJump = 'before' | 'after';

/** The first of two equal times is the end of what was, the last the beginning of what comes. */
function sideOf(times: readonly number[], i: number): SideOfJump {
  return times[i] === times[i + 1] || i === times.length - 1 ? 'before' : 'after';
}

/** A history at a time, straight between its points. */
export function valueAt(curves: Curves, of: keyof Curves, time: number, side: SideOfJump): number {
  const times = curves.time_s;
  const values = curves[of];
  const next =
    side === 'before' ? times.findIndex((t) => t >= time) : times.findLastIndex((t) => t <= time) + 1;
  const at = side === 'before' ? next : next - 1;
  if (times[at] === time) return values[at] ?? NaN;
  const [t0, t1] = [times[next - 1] ?? NaN, times[next] ?? NaN];
  const [v0, v1] = [values[next - 1] ?? NaN, values[next] ?? NaN];
  return v0 + ((v1 - v0) * (time - t0)) / (t1 - t0);
}

export interface Reading {
  position: number;
  /** From the entry and from spraying [s]. */
  inside: number;
  after: number;
  zone: TunnelZone | undefined;
  temperatures: number[];
  water: number[];
  conversion: number | null;
}

/** Everything that the picture shows at one place. At a border it reads what comes, at the exit what was. */
export function readAt(picture: TunnelPicture, position: number): Reading {
  const at = Math.min(Math.max(position, 0), picture.length);
  const after = picture.timeAt(at);
  const read = (line: TunnelLine): number => between(picture.positions, line.values, at);
  return {
    position: at,
    inside: after - picture.entered,
    after,
    zone: picture.zones.find((z) => at < z.to) ?? picture.zones.at(-1),
    temperatures: picture.temperatures.map(read),
    water: picture.water.map(read),
    conversion: picture.conversion && read(picture.conversion),
  };
}

function between(xs: readonly number[], ys: readonly number[], x: number): number {
  const next = xs.findIndex((v) => v > x);
  if (next < 0) return ys.at(-1) ?? NaN;
  if (next === 0) return ys[0] ?? NaN;
  const [x0, x1] = [xs[next - 1] ?? NaN, xs[next] ?? NaN];
  const [y0, y1] = [ys[next - 1] ?? NaN, ys[next] ?? NaN];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

export interface TunnelEvent {
  event: string;
  reading: Reading;
}

/** The way through the tunnel as rows: zones entered, marks reached, the exit. */
export function eventsOf(picture: TunnelPicture): TunnelEvent[] {
  const t = detail.tunnel;
  const events = [
    ...picture.zones.map((z) => ({ at: z.from, event: t.enters({ zone: z.name }) })),
    ...picture.marks.map((m) => ({ at: m.at, event: m.label })),
    { at: picture.length, event: t.exit },
  ];
  return events
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, event }) => ({ event, reading: readAt(picture, at) }));
}

/** Places along the tunnel that a cursor stops at [m]. */
export const tunnelStops = ({ length }: TunnelPicture): number[] =>
  Array.from({ length: 161 }, (_, i) => (length * i) / 160);

/** What is read at a place, in words. */
export function readTunnel(picture: TunnelPicture, position: number): Read {
  const reading = readAt(picture, position);
  const t = detail.tunnel;
  const line = (l: TunnelLine, value: number | undefined, unit: string) => ({
    name: l.name,
    value: `${number(value ?? NaN)} ${unit}`,
    sign: { kind: 'line', style: l.style } as const,
  });
  return {
    where: t.readAt({
      metres: amount(reading.position, 'length'),
      inside: duration(reading.inside),
      after: duration(reading.after),
    }),
    values: [
      ...(reading.zone ? [{ name: reading.zone.name, value: t.kinds[reading.zone.kind] }] : []),
      ...picture.temperatures.map((l, i) => line(l, reading.temperatures[i], unitOf('temperature'))),
      ...picture.water.map((l, i) => line(l, reading.water[i], unitOf('water'))),
      ...(picture.conversion && reading.conversion !== null
        ? [line(picture.conversion, reading.conversion, unitOf('share'))]
        : []),
    ],
  };
}

/** The lines of the picture as columns of a table, in their order. */
export const lineColumns = (picture: TunnelPicture): Column[] => [
  ...picture.temperatures.map((l) => numbers(l.name, unitOf('temperature'))),
  ...picture.water.map((l) => numbers(l.name, unitOf('water'))),
  ...(picture.conversion ? [numbers(picture.conversion.name, unitOf('share'))] : []),
];

const lineValues = (r: Reading): number[] => [
  ...r.temperatures,
  ...r.water,
  ...(r.conversion === null ? [] : [r.conversion]),
];

/** The whole histories along the tunnel. */
export const tunnelTable = (picture: TunnelPicture): Table => ({
  columns: [
    numbers(detail.tunnel.position, unitOf('length')),
    times(detail.tunnel.time),
    ...lineColumns(picture),
  ],
  rows: picture.positions.map((position, i) => [
    shownIn(position, 'length'),
    picture.timeAt(position),
    ...[...picture.temperatures, ...picture.water, ...(picture.conversion ? [picture.conversion] : [])].map(
      (l) => l.values[i] ?? null,
    ),
  ]),
});

/** The way through the tunnel as a short table: zones entered, marks reached, the exit. */
export const eventTable = (picture: TunnelPicture): Table => ({
  columns: [
    words(detail.tunnel.event),
    numbers(detail.tunnel.position, unitOf('length')),
    times(detail.tunnel.time),
    ...lineColumns(picture),
  ],
  rows: eventsOf(picture).map(({ event, reading }) => [
    event,
    shownIn(reading.position, 'length'),
    reading.after,
    ...lineValues(reading),
  ]),
});
