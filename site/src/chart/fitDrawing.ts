/** Draws a fit: points over the fitted curve with its band, and the residuals. Series differ in colour, dash and symbol. */
import { fitStops, type FitDot, type FitPicture, type FitSeries } from './fits';
import { colourOf, dashOf, filledSymbol, symbolPath } from './lines';
import * as plot from './marks';
import { drawnOf, marginsOf, pixels, sideways, upwards } from './paper';
import type { Drawn } from './reading';
import { element, group } from './textures';

const margin = { left: 50, right: 14, top: 12, bottom: 26 };

const frame = (picture: FitPicture, width: number, height: number): object => ({
  className: 'plot',
  width,
  height,
  ...marginsOf(margin),
  style: { fontSize: '11.5px' },
  x: { label: null, domain: picture.domain, inset: 6 },
});

/** Points as they were measured, with the sign of their series; an outlier is crossed out. */
function dots(picture: FitPicture, at: (d: FitDot) => { x: number; y: number }): SVGElement {
  return group(
    picture.series.flatMap((s: FitSeries) =>
      s.dots.map((d) => {
        const { x, y } = at(d);
        const colour = colourOf(s.style);
        return element('path', {
          d: d.light ? 'M-4-4L4 4M4-4L-4 4' : symbolPath(s.style),
          transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`,
          fill: d.light ? 'none' : filledSymbol(s.style) ? colour : 'var(--surface)',
          stroke: colour,
          'stroke-width': 1.4,
        });
      }),
    ),
  );
}

function withDots(chart: ReturnType<typeof plot.plot>, picture: FitPicture, of: 'y' | 'residual'): Drawn {
  const at = pixels(chart);
  const place = (d: FitDot): { x: number; y: number } => at(d.x, d[of]);
  chart.append(dots(picture, place));
  return drawnOf(chart, margin, () =>
    fitStops(picture).map(({ dot }) => ({ ...place(dot), dots: [place(dot)] })),
  );
}

export function drawFit(picture: FitPicture, width: number): Drawn {
  const height = Math.round(Math.min(380, Math.max(250, width * 0.52)));
  const ends = picture.series.flatMap((s) => [
    ...s.dots.map((d) => d.y),
    ...s.curve.flatMap((c) => [c.low, c.high]),
  ]);
  const chart = plot.plot({
    ...frame(picture, width, height),
    ariaLabel: picture.title,
    y: { label: null, nice: 5, domain: spanOf(ends) },
    marks: [
      ...upwards(6),
      sideways(width),
      ...picture.series.map((s) =>
        plot.areaY(s.curve, { x: 'x', y1: 'low', y2: 'high', fill: colourOf(s.style), fillOpacity: 0.2 }),
      ),
      ...picture.series.map((s) =>
        plot.line(s.curve, {
          x: 'x',
          y: 'y',
          stroke: colourOf(s.style),
          strokeWidth: 2,
          strokeDasharray: dashOf(s.style),
        }),
      ),
    ],
  });
  return withDots(chart, picture, 'y');
}

export function drawResiduals(picture: FitPicture, width: number): Drawn {
  const ends = picture.series.flatMap((s) => s.dots.map((d) => d.residual));
  const chart = plot.plot({
    ...frame(picture, width, 170),
    ariaLabel: picture.residualLabel,
    y: { label: null, nice: 4, domain: spanOf([0, ...ends]) },
    marks: [...upwards(4), sideways(width), plot.ruleY([0], { stroke: 'var(--ink)' })],
  });
  return withDots(chart, picture, 'residual');
}

const spanOf = (values: readonly number[]): [number, number] => {
  const known = values.filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return high > low ? [low, high] : [low - 1, high + 1];
};
