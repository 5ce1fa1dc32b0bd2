/** Draws histories: lines that differ in colour and in dash, over the stages of the route. */
import type { CurvePicture, Point, Stretch } from './curves';
import { definitions, fillOf } from './patterns';
import { textWidth, type Plot } from './plot';
import { tickLabel, ticksWithin } from './time';
import { duration, number } from '../text/quantity';

/** Dash patterns by style, so that lines stay apart in grey. */
export const dashes: readonly string[] = ['', '', '7 3', '2 3', '1 0', '9 3 2 3'];
export const colourOf = (style: number): string => `var(--line-${style})`;
/** The line of comparison (air, balance) is thin; what happens to the film is bold. */
export const weightOf = (style: number): number => (style === 4 ? 1.4 : 2.1);

export function drawCurves(
  plot: Plot,
  picture: CurvePicture,
  width: number,
  prefix: string,
): SVGElement | HTMLElement {
  const height = Math.round(Math.min(300, Math.max(220, width * 0.5)));
  const left = 46;
  const right = 12;
  const { domain, log, series } = picture;
  const ticks = log ? ticksWithin(...domain) : undefined;
  const scale = (x: number): number => {
    const share = log
      ? Math.log(x / domain[0]) / Math.log(domain[1] / domain[0])
      : (x - domain[0]) / (domain[1] - domain[0]);
    return left + share * (width - left - right);
  };
  const roomy = picture.stretches.filter((s) => scale(s.to) - scale(s.from) > textWidth(s.name, 11) + 8);
  const readings = readOut(picture);

  const drawn = plot.plot({
    className: 'plot',
    width,
    height,
    marginLeft: left,
    marginRight: right,
    marginTop: 26,
    marginBottom: 24,
    style: { fontSize: '11.5px' },
    ariaLabel: picture.title,
    x: { type: log ? 'log' : 'linear', domain, label: null, ...(log ? { axis: null } : {}) },
    y: { label: null, zero: picture.fromZero, nice: true, grid: false, tickSize: 0 },
    marks: [
      plot.rect(picture.stretches.filter(isHot), {
        x1: 'from',
        x2: 'to',
        fill: 'var(--heat-soft)',
        insetTop: 0,
      }),
      ...picture.stretches.filter(isOven).map((s) =>
        plot.rect([s], {
          x1: 'from',
          x2: 'to',
          fill: fillOf(s.kind === 'cooling' ? 'cooling' : 'heated', prefix),
          insetTop: -6,
          insetBottom: height - 26 - 24,
        }),
      ),
      plot.gridY({ stroke: 'var(--line)', strokeOpacity: 1 }),
      plot.ruleX(
        picture.stretches.slice(1).map((s) => s.from),
        { stroke: 'var(--edge)', strokeDasharray: '1 3' },
      ),
      plot.text(roomy, {
        x: (s: Stretch) => (log ? Math.sqrt(s.from * s.to) : (s.from + s.to) / 2),
        frameAnchor: 'top',
        dy: -18,
        text: 'name',
        fill: 'var(--muted)',
        fontSize: 11,
      }),
      ...(ticks
        ? [
            plot.gridX(ticks, { stroke: 'var(--line)', strokeOpacity: 1 }),
            plot.text(ticks, { x: (t: number) => t, text: tickLabel, frameAnchor: 'bottom', dy: 14 }),
          ]
        : [plot.axisX({ label: null, tickSize: 4, ticks: Math.max(3, Math.floor(width / 90)) })]),
      plot.axisY({ label: null, tickSize: 0, ticks: 5, tickFormat: (v: number) => number(v) }),
      ...series.map((s) =>
        plot.line(s.points, {
          x: 'x',
          y: 'y',
          stroke: colourOf(s.style),
          strokeWidth: weightOf(s.style),
          strokeDasharray: dashes[s.style] ?? '',
          clip: true,
        }),
      ),
      plot.ruleX(readings, plot.pointerX({ x: 'x', stroke: 'var(--ink)', strokeWidth: 0.75 })),
      plot.tip(
        readings,
        plot.pointerX({ x: 'x', y: 'y', title: 'words', fontSize: 12, stroke: 'var(--edge)', anchor: 'top' }),
      ),
    ],
  });
  drawn.prepend(definitions(prefix));
  return drawn;
}

const isOven = (s: Stretch): boolean => s.kind === 'oven' || s.kind === 'heated' || s.kind === 'cooling';
const isHot = (s: Stretch): boolean => s.kind === 'oven' || s.kind === 'heated';

interface Reading extends Point {
  words: string;
}

/** What the pointer reads at each time: all series at once. */
function readOut(picture: CurvePicture): Reading[] {
  const points = picture.series[0]?.points ?? [];
  return points.map((p, i) => {
    const at = picture.log ? duration(p.x) : `${number(p.x)} ${picture.unit}`;
    const lines = picture.series.map((s) => `${s.name}: ${number(s.points[i]?.y ?? NaN)}`);
    return { ...p, words: [at, ...lines].join('\n') };
  });
}
