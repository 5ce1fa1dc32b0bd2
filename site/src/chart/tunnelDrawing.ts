/**
 * Lays the tunnel picture out in pixels: minutes above, the zones to scale, the marks, a strip of temperatures and one
 * of water and conversion, metres below, all on one axis.
 */
import { pictures } from '../text/pictures';
import { detail } from '../text/detail';
import { duration, number, temperature, water } from '../text/quantity';
import { heightAt, placeNames, type NamePlace, type Pixel } from './beside';
import { placeFlags, rowsOf } from './flags';
import { textWidth } from './measure';
import { amount, shownIn, unitOf, withUnit } from './scale';
import { roundSpan, roundTicks } from './ticks';
import { linearUnit } from './time';
import type { TunnelLine, TunnelMark, TunnelPicture, TunnelZone } from './tunnel';

export const font = 12;
const small = 11.5;
const row = 17;
const lineHeight = 15;
/** Height of the textured strip of the zones. */
export const zoneStrip = 10;
const besideGlyph = 10;

export interface Tick {
  at: number;
  words: string;
}

export interface ZoneBox {
  zone: TunnelZone;
  x: number;
  width: number;
  /** All that is to be said of the zone, or its number in the key. */
  words: string[];
}

export interface Flag extends Pixel {
  mark: TunnelMark;
  words: string;
  side: 'left' | 'right';
}

export interface DrawnLine {
  name: string;
  style: number;
  d: string;
  points: Pixel[];
}

export interface Strip {
  title: string;
  /** The second axis, on the right. */
  rightTitle: string;
  top: number;
  bottom: number;
  ticks: Tick[];
  rightTicks: Tick[];
  lines: DrawnLine[];
  names: NamePlace[];
}

export interface TunnelDrawing {
  width: number;
  height: number;
  left: number;
  right: number;
  unit: string;
  exit: string;
  minutes: Tick[];
  metres: Tick[];
  zones: ZoneBox[];
  zonesTop: number;
  zonesBottom: number;
  flags: Flag[];
  strips: Strip[];
  /** A place in the tunnel [m] to pixels and back. */
  x(position: number): number;
  position(x: number): number;
}

export function drawTunnel(picture: TunnelPicture, width: number): TunnelDrawing {
  const left = 46;
  const right = width - (picture.conversion ? 44 : 14);
  const x = (position: number): number => left + (position / picture.length) * (right - left);
  const unit = linearUnit(picture.passing);
  const spread = Math.max(3, Math.min(12, Math.floor((right - left) / 50)));
  const minutes = roundTicks(0, picture.passing / unit.seconds, spread)
    .map((v) => ({ at: x(picture.placeAt(picture.entered + v * unit.seconds)), words: number(v) }))
    .filter((t) => t.at <= right - 12); // the exit's own line stands there
  const long = shownIn(picture.length, 'length');
  const metres = roundTicks(0, long, spread).map((v) => ({
    at: left + (v / long) * (right - left),
    words: number(v),
  }));

  const zones = boxesOf(picture.zones, x);
  const zonesTop = 36;
  const tallest = Math.max(...zones.map((z) => z.words.length));
  const zonesBottom = zonesTop + zoneStrip + tallest * lineHeight + 8;

  const words = picture.marks.map((m) => `${m.label}, ${amount(m.at, 'length')}`);
  const placed = placeFlags(
    picture.marks.map((m, i) => ({ x: x(m.at), width: textWidth(words[i] ?? '', font) + besideGlyph + 2 })),
    right,
    besideGlyph,
  );
  const marksBottom = zonesBottom + 4 + rowsOf(placed) * row;
  const flags = picture.marks.map((mark, i): Flag => {
    const { row: n, side } = placed[i] ?? { row: 0, side: 'right' as const };
    return { mark, words: words[i] ?? '', side, x: x(mark.at), y: marksBottom - 8 - n * row };
  });

  const tall = width < 640 ? [130, 110] : [160, 120];
  const across = picture.positions.map(x);
  const t = detail.tunnel;
  const top = marksBottom + 20;
  const hot = stripOf(
    withUnit(t.temperature, unitOf('temperature')),
    picture.temperatures,
    null,
    across,
    top,
    tall[0] ?? 0,
    false,
  );
  const wet = stripOf(
    withUnit(t.water, pictures.ofSolids({ unit: unitOf('water') })),
    picture.water,
    picture.conversion,
    across,
    hot.bottom + 24,
    tall[1] ?? 0,
    true,
  );

  const exit = [
    t.exitAt({ time: picture.exit?.text ?? duration(picture.entered + picture.passing) }),
    t.exit,
  ];
  const inside = t.inside({ unit: unit.name });
  const free = right - left - textWidth(inside, small) - 12;
  return {
    width,
    height: wet.bottom + 38,
    left,
    right,
    unit: inside,
    exit: exit.find((w) => textWidth(w, small, 600) <= free) ?? t.exit,
    minutes,
    metres,
    zones,
    zonesTop,
    zonesBottom,
    flags,
    strips: [hot, wet],
    x,
    position: (at) => Math.min(picture.length, Math.max(0, ((at - left) / (right - left)) * picture.length)),
  };
}

/** The boxes of the zones with all their words where every box holds them, else with their numbers. */
function boxesOf(zones: readonly TunnelZone[], x: (position: number) => number): ZoneBox[] {
  const boxes = zones.map((z) => ({
    zone: z,
    x: x(z.from),
    width: x(z.to) - x(z.from),
    words: zoneWords(z),
  }));
  const whole = boxes.every(({ words, width }) =>
    words.every((w, i) => textWidth(w, font, i === 0 ? 650 : 400) + 10 <= width),
  );
  return boxes.map((b) => ({ ...b, words: whole ? b.words : [String(b.zone.number)] }));
}

const zoneWords = (z: TunnelZone): string[] => [
  z.name,
  detail.tunnel.kinds[z.kind],
  temperature(z.temperature),
  water(z.humidity),
];

/** A strip with an axis on the left, and one on the right for a line of another quantity. */
function stripOf(
  title: string,
  lines: readonly TunnelLine[],
  other: TunnelLine | null,
  across: readonly number[],
  top: number,
  height: number,
  fromZero: boolean,
): Strip {
  const bottom = top + height;
  const all = lines.flatMap((l) => l.values);
  const span = roundSpan(fromZero ? 0 : Math.min(...all), Math.max(...all), 5);
  const scale = ([low, high]: readonly [number, number]) => {
    return (v: number): number => bottom - ((v - low) / (high - low)) * height;
  };
  const [y, rightY] = [scale(span), scale([0, 100])];
  const drawn = [...lines.map((l) => trace(l, across, y)), ...(other ? [trace(other, across, rightY)] : [])];
  const named = drawn.map((l) => ({ name: l.name, width: textWidth(l.name, font, 600), points: l.points }));
  const frame = { left: across[0] ?? 0, right: across.at(-1) ?? 0, top, bottom };
  return {
    title,
    rightTitle: other ? withUnit(detail.tunnel.conversion, unitOf('share')) : '',
    top,
    bottom,
    ticks: roundTicks(...span, 5).map((v) => ({ at: y(v), words: number(v) })),
    rightTicks: other ? [0, 50, 100].map((v) => ({ at: rightY(v), words: number(v) })) : [],
    lines: drawn,
    names: placeNames(named, frame),
  };
}

function trace(
  { label, style, values }: TunnelLine,
  across: readonly number[],
  y: (v: number) => number,
): DrawnLine {
  const points = values.map((v, i) => ({ x: across[i] ?? 0, y: y(v) }));
  const d = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join('');
  return { name: label, style, d, points };
}

/** Where the lines of a strip stand at a place, in pixels. */
export const dotsAt = ({ lines }: Strip, x: number): Pixel[] =>
  lines.map((l) => ({ x, y: heightAt(l.points, x) }));
