/** Draws a fit: points over the fitted curve with its band, and the residuals. Series differ in colour, dash and symbol. */
import { number } from '../text/quantity';
import type { FitDot, FitPicture, FitSeries } from './fits';
import { colourOf, dashes } from './lines';
import type { Markish } from '@observablehq/plot';
import * as plot from './marks';

/** Symbols by style, open ones, so that overlapping points can be told apart. */
export const symbols = ['circle', 'circle', 'square', 'triangle', 'diamond', 'star'] as const;

const margin = { marginLeft: 50, marginRight: 14, marginTop: 12, marginBottom: 26 };

const frame = (picture: FitPicture, width: number, height: number): object => ({
  className: 'plot',
  width,
  height,
  ...margin,
  style: { fontSize: '11.5px' },
  x: { label: null, domain: picture.domain, inset: 6 },
});

const axes = (width: number, ticks: number): Markish[] => [
  plot.gridY({ ticks, stroke: 'var(--line)', strokeOpacity: 1 }),
  plot.axisX({ label: null, tickSize: 4, ticks: Math.max(3, Math.floor(width / 90)) }),
  plot.axisY({ label: null, tickSize: 0, ticks, tickFormat: (v: number) => number(v) }),
];

/** Points as they were measured; an outlier is crossed out. */
function dots(s: FitSeries, y: 'y' | 'residual'): ReturnType<typeof plot.dot>[] {
  const colour = colourOf(s.style);
  const common = { x: 'x', y, stroke: colour, strokeWidth: 1.4 };
  const light = (d: FitDot): boolean => d.light;
  return [
    plot.dot(
      s.dots.filter((d) => !light(d)),
      { ...common, symbol: symbols[s.style] ?? 'circle', r: 3.2, fill: 'var(--surface)' },
    ),
    plot.dot(s.dots.filter(light), { ...common, symbol: 'times', r: 4 }),
  ];
}

export function drawFit(picture: FitPicture, width: number): SVGElement | HTMLElement {
  const height = Math.round(Math.min(380, Math.max(250, width * 0.52)));
  return plot.plot({
    ...frame(picture, width, height),
    ariaLabel: picture.title,
    y: { label: null, nice: 5 },
    marks: [
      ...axes(width, 6),
      ...picture.series.map((s) =>
        plot.areaY(s.curve, { x: 'x', y1: 'low', y2: 'high', fill: colourOf(s.style), fillOpacity: 0.2 }),
      ),
      ...picture.series.map((s) =>
        plot.line(s.curve, {
          x: 'x',
          y: 'y',
          stroke: colourOf(s.style),
          strokeWidth: 2,
          strokeDasharray: dashes[s.style] ?? '',
        }),
      ),
      ...picture.series.flatMap((s) => dots(s, 'y')),
    ],
  });
}

export function drawResiduals(picture: FitPicture, width: number): SVGElement | HTMLElement {
  return plot.plot({
    ...frame(picture, width, 170),
    ariaLabel: picture.residualLabel,
    y: { label: null, nice: 4 },
    marks: [
      ...axes(width, 4),
      plot.ruleY([0], { stroke: 'var(--ink)' }),
      ...picture.series.flatMap((s) => dots(s, 'residual')),
    ],
  });
}
