/** Draws histories: lines that differ in colour and in dash, over the stages of the route. */
import { stopsOf, type CurvePicture, type Stretch } from './curves';
import { colourOf, dashOf, weightOf } from './lines';
import * as plot from './marks';
import { textWidth } from './measure';
import { lineNames } from './names';
import { drawnOf, heightOf, marginsOf, pixels, sideways, upwards } from './paper';
import type { Drawn } from './reading';
import { group, textured } from './textures';
import { tickLabel, ticksWithin } from './time';

const margin = { left: 46, right: 12, top: 28, bottom: 24 };
/** Height of the strip that says where the oven heats or cools. */
const strip = 6;

export function drawCurves(picture: CurvePicture, width: number): Drawn {
  const { domain, log, series, stretches } = picture;
  const ticks = log ? ticksWithin(...domain) : undefined;
  const place = (x: number): number => {
    const share = log
      ? Math.log(x / domain[0]) / Math.log(domain[1] / domain[0])
      : (x - domain[0]) / (domain[1] - domain[0]);
    return margin.left + share * (width - margin.left - margin.right);
  };
  const strips = (): SVGElement =>
    group(
      stretches.filter(isOven).map((s) => {
        const [x, to] = [place(s.from), place(s.to)];
        const box = { x, y: margin.top - strip, width: Math.max(1, to - x), height: strip };
        return textured(s.kind === 'cooling' ? 'cooling' : 'heated', box, 'var(--heat)');
      }),
    );

  const chart = plot.plot({
    className: 'plot',
    width,
    height: heightOf(width),
    ...marginsOf(margin),
    style: { fontSize: '11.5px' },
    ariaLabel: picture.title,
    x: { type: log ? 'log' : 'linear', domain, label: null, ...(log ? { axis: null } : {}) },
    y: { label: null, zero: picture.fromZero, nice: 5, grid: false, tickSize: 0 },
    marks: [
      plot.rect(stretches.filter(isHot), { x1: 'from', x2: 'to', fill: 'var(--heat-soft)' }),
      strips,
      ...upwards(),
      plot.ruleX(
        stretches.slice(1).map((s) => s.from),
        { stroke: 'var(--edge)', strokeDasharray: '1 3' },
      ),
      plot.text(named(stretches, place), {
        x: (s: Stretch) => (log ? Math.sqrt(s.from * s.to) : (s.from + s.to) / 2),
        frameAnchor: 'top',
        dy: -20,
        text: 'name',
        fill: 'var(--muted)',
        fontSize: 11,
      }),
      ...(ticks
        ? [
            plot.gridX(ticks, { stroke: 'var(--line)', strokeOpacity: 1 }),
            plot.text(ticks, { x: (t: number) => t, text: tickLabel, frameAnchor: 'bottom', dy: 14 }),
          ]
        : [sideways(width)]),
      ...series.map((s) =>
        plot.line(s.points, {
          x: 'x',
          y: 'y',
          stroke: colourOf(s.style),
          strokeWidth: weightOf(s.style),
          strokeDasharray: dashOf(s.style),
          clip: true,
        }),
      ),
    ],
  });
  const at = pixels(chart);
  const drawn = drawnOf(chart, margin, () =>
    stopsOf(picture).map((i) => {
      const x = series[0]?.points[i]?.x ?? NaN;
      return { ...at(x, 0), dots: series.map((s) => at(x, s.points[i]?.y ?? NaN)) };
    }),
  );
  const lines = series.map((s) => ({ ...s, points: s.points.map((p) => at(p.x, p.y)) }));
  drawn.svg.append(lineNames(lines, drawn.frame));
  return drawn;
}

/** Stages by name where there is room for it, else by the number that the key explains, else not at all. */
function named(stretches: readonly Stretch[], place: (x: number) => number): Stretch[] {
  return stretches.flatMap((s) => {
    const room = place(s.to) - place(s.from);
    const fits = [`${s.number} ${s.name}`, String(s.number)].find((w) => textWidth(w, 11) + 4 <= room);
    return fits === undefined ? [] : [{ ...s, name: fits }];
  });
}

const isOven = (s: Stretch): boolean => s.kind === 'oven' || s.kind === 'heated' || s.kind === 'cooling';
const isHot = (s: Stretch): boolean => s.kind === 'oven' || s.kind === 'heated';
