/** Draws the moist-air chart: its own lines pale and thin with their numbers at their ends, the way of air and film over them. */
import type { Frame, Pixel } from './beside';
import type { Point } from './curves';
import { glyphs } from './glyphs';
import { chartLines, colourOf, dashOf } from './lines';
import { textWidth } from './measure';
import type { MoistPicture } from './moist';
import type { Drawn } from './reading';
import { roundTicks } from './ticks';
import { element, group } from './textures';
import { number } from '../text/quantity';
import { pictures } from '../text/pictures';

const font = 11.5;
const small = 10.5;
const margin = { left: 46, right: 40, top: 20, bottom: 26 };

export function drawMoist(picture: MoistPicture, width: number): Drawn {
  const height = Math.round(Math.min(480, Math.max(300, width * 0.58)));
  const frame: Frame = {
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: height - margin.bottom,
  };
  const { low, high, most } = picture;
  const x = (v: number): number => frame.left + ((v - low) / (high - low)) * (frame.right - frame.left);
  // What lies far above the frame is cut off there; a drawing must not hold infinite numbers.
  const y = (v: number): number => frame.bottom - (Math.min(v, 3 * most) / most) * (frame.bottom - frame.top);
  const at = (p: Point): Pixel => ({ x: x(p.x), y: y(p.y) });
  const inside = (p: Point): boolean => p.x >= low && p.x <= high && p.y >= 0 && p.y <= most;

  const svg = element('svg', {
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    'font-size': font,
    fill: 'currentColor',
  });
  svg.setAttribute('class', 'plot');

  for (const v of roundTicks(low, high, Math.max(3, Math.floor(width / 80)))) {
    svg.append(
      line(x(v), frame.bottom, x(v), frame.bottom + 5, { stroke: 'var(--edge)' }),
      say(number(v), x(v), frame.bottom + 18, { 'text-anchor': 'middle' }),
    );
  }
  for (const v of roundTicks(0, most, 6)) {
    svg.append(
      line(frame.left, y(v), frame.right, y(v), { stroke: 'var(--line)' }),
      say(number(v), frame.left - 7, y(v) + 4, { 'text-anchor': 'end' }),
    );
  }

  // The chart itself.
  const taken: Box[] = [];
  const saturated = picture.saturation.map(at);
  end(pictures.moist.saturation, saturated.at(-1));
  for (const l of picture.wetBulbs) {
    const points = l.points.map(at);
    svg.append(path(points, chartLines.wetBulb));
    const [first] = points;
    if (first) put(l.name, first.x - 5, first.y - 2, 'end');
  }
  for (const l of picture.humidities) {
    const points = l.points.map(at);
    svg.append(path(points, chartLines.humidity));
    end(l.name, points.at(-1));
  }
  svg.append(
    path(saturated, chartLines.saturation),
    line(frame.left, frame.bottom, frame.right, frame.bottom, { stroke: 'var(--edge)' }),
    line(frame.right, frame.top, frame.right, frame.bottom, { stroke: 'var(--edge)' }),
  );

  // The process.
  for (const { dew, ...air } of picture.airs) {
    if (!dew || !inside(dew) || !inside(air)) continue;
    svg.append(
      line(x(dew.x), y(dew.y), x(air.x), y(air.y), { stroke: colourOf(4), 'stroke-dasharray': '2 4' }),
    );
  }
  const films = cut(picture.film.map(at), frame);
  const airs = cut(picture.air.map(at), frame);
  svg.append(
    path(films, { stroke: 'var(--surface)', 'stroke-width': 4.6 }),
    path(films, { stroke: colourOf(1), 'stroke-width': 2.6 }),
    group(heads(films)),
    // Over the film: where both go the same way, its dashes let the film's line through.
    path(airs, { stroke: colourOf(2), 'stroke-width': 1.8, 'stroke-dasharray': dashOf(2) }),
  );
  for (const { dew } of picture.airs) {
    if (!dew || !inside(dew)) continue;
    const p = at(dew);
    svg.append(
      element('path', {
        d: 'M0-5L5 0L0 5L-5 0Z',
        transform: move(p),
        fill: 'var(--surface)',
        stroke: colourOf(4),
        'stroke-width': 1.6,
      }),
    );
  }
  for (const { numbers, ...air } of picture.airs) {
    if (!inside(air)) continue;
    svg.append(badge(numbers.join(', '), at(air), frame));
  }
  for (const m of picture.marks) {
    if (!inside(m)) continue;
    const { d, open } = glyphs[m.name];
    svg.append(
      element('path', {
        d,
        transform: move(at(m)),
        fill: open ? 'none' : 'var(--ink)',
        stroke: open ? 'var(--ink)' : 'var(--surface)',
        'stroke-width': open ? 1.6 : 1.3,
      }),
    );
  }

  const places = picture.air.map((a, i) => {
    const dots = [a, picture.film[i]].map((p) => (p && inside(p) ? at(p) : { x: Number.NaN, y: Number.NaN }));
    return { x: x(a.x), y: y(a.y), dots };
  });
  return { svg, frame, places };

  /** A number at the end of a line: above the frame or to its right, where none stands yet. */
  function end(words: string, p: Pixel | undefined): void {
    if (!p) return;
    if (p.y <= frame.top + 1) put(words, p.x, frame.top - 6, 'middle');
    else put(words, frame.right + 5, p.y + 4, 'start');
  }

  function put(words: string, tx: number, ty: number, anchor: 'start' | 'middle' | 'end'): void {
    const wide = textWidth(words, small);
    const from = anchor === 'start' ? tx : anchor === 'middle' ? tx - wide / 2 : tx - wide;
    const box = { left: from - 3, right: from + wide + 3, top: ty - small, bottom: ty + 2 };
    const meets = (b: Box): boolean =>
      b.left < box.right && b.right > box.left && b.top < box.bottom && b.bottom > box.top;
    if (box.left < frame.left || box.right > width || taken.some(meets)) return;
    taken.push(box);
    svg.append(say(words, tx, ty, { 'text-anchor': anchor, 'font-size': small }));
  }
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

type More = Readonly<Record<string, string | number>>;

const move = ({ x, y }: Pixel): string => `translate(${x.toFixed(1)} ${y.toFixed(1)})`;

const line = (x1: number, y1: number, x2: number, y2: number, more: More): SVGElement =>
  element('line', { x1, y1, x2, y2, ...more });

function say(words: string, x: number, y: number, more: More): SVGElement {
  const made = element('text', { x, y, fill: 'var(--muted)', ...more });
  made.textContent = words;
  return made;
}

const path = (points: readonly Pixel[], more: More): SVGElement =>
  element('path', {
    d: points
      .map((p, i) => {
        const gap = i === 0 || Number.isNaN(points[i - 1]?.x);
        return Number.isNaN(p.x) ? '' : `${gap ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`;
      })
      .join(''),
    fill: 'none',
    'stroke-linejoin': 'round',
    ...more,
  });

/** A path without what lies above the frame: it ends and begins again at the top border. */
function cut(points: readonly Pixel[], { top }: Frame): Pixel[] {
  const gap: Pixel = { x: Number.NaN, y: Number.NaN };
  return points.flatMap((p, i) => {
    const before = points[i - 1];
    const out = p.y < top;
    if (!before) return out ? [gap] : [p];
    const was = before.y < top;
    if (out && was) return [gap];
    if (!out && !was) return [p];
    const share = (top - before.y) / (p.y - before.y);
    const edge = { x: before.x + (p.x - before.x) * share, y: top };
    return out ? [edge, gap] : [edge, p];
  });
}

/** Arrow heads along a path, at some even distances, so that its direction is seen. */
function heads(points: readonly Pixel[]): SVGElement[] {
  const every = 110;
  const made: SVGElement[] = [];
  let walked = every / 2;
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (!before || Number.isNaN(before.x) || Number.isNaN(p.x)) return;
    walked += Math.hypot(p.x - before.x, p.y - before.y);
    if (walked < every) return;
    walked = 0;
    const angle = (Math.atan2(p.y - before.y, p.x - before.x) * 180) / Math.PI;
    made.push(
      element('path', {
        d: 'M-5-4.2L4 0L-5 4.2Z',
        transform: `translate(${p.x.toFixed(1)} ${p.y.toFixed(1)}) rotate(${angle.toFixed(0)})`,
        fill: colourOf(1),
        stroke: 'var(--surface)',
        'stroke-width': 1,
      }),
    );
  });
  return made;
}

/** The air of some stages: a dot, and their numbers beside it on the side that has the room. */
function badge(words: string, { x, y }: Pixel, { right, top }: Frame): SVGElement {
  const wide = Math.max(17, textWidth(words, font, 700) + 9);
  const left = Math.min(x + 5, right - wide - 2);
  const middle = y - 17 < top ? y + 16 : y - 16;
  const made = element('text', {
    x: left + wide / 2,
    y: middle + 4,
    'text-anchor': 'middle',
    'font-size': font,
    'font-weight': 700,
    fill: 'var(--ink)',
  });
  made.textContent = words;
  return group([
    element('circle', {
      cx: x,
      cy: y,
      r: 4,
      fill: colourOf(2),
      stroke: 'var(--surface)',
      'stroke-width': 1.2,
    }),
    element('rect', {
      x: left,
      y: middle - 8.5,
      width: wide,
      height: 17,
      rx: 8.5,
      fill: 'var(--surface)',
      stroke: colourOf(2),
      'stroke-width': 1.6,
    }),
    made,
  ]);
}
