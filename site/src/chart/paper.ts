/** What drawings by Plot have in common: margins, grid and axes, and the way from a chart to a picture that can be read off. */
import type { Markish, Plot } from '@observablehq/plot';
import type { Frame, Pixel } from './beside';
import { number } from '../text/quantity';
import * as plot from './marks';
import type { Drawn, Place } from './reading';

export interface Margins {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export const marginsOf = ({ left, right, top, bottom }: Margins): object => ({
  marginLeft: left,
  marginRight: right,
  marginTop: top,
  marginBottom: bottom,
});

/** The height of an ordinary picture of this width. */
export const heightOf = (width: number): number => Math.round(Math.min(300, Math.max(220, width * 0.5)));

/** Grid and axis upwards, without its name, which stands over the picture. */
export const upwards = (ticks = 5): Markish[] => [
  plot.gridY({ ticks, stroke: 'var(--line)', strokeOpacity: 1 }),
  plot.axisY({ label: null, tickSize: 0, ticks, tickFormat: (v: number) => number(v) }),
];

export const sideways = (width: number): Markish =>
  plot.axisX({
    label: null,
    tickSize: 4,
    ticks: Math.max(3, Math.floor(width / 90)),
    tickFormat: (v: number) => number(v),
  });

type Chart = (SVGSVGElement | HTMLElement) & Plot;

/** Values to pixels, by the scale that Plot has chosen. */
export function pixels(chart: Chart): (x: number, y: number) => Pixel {
  const [x, y] = [chart.scale('x'), chart.scale('y')];
  return (a, b) => ({
    x: (x?.apply(a) as number | undefined) ?? NaN,
    y: (y?.apply(b) as number | undefined) ?? NaN,
  });
}

/** A chart as a picture. */
export function drawnOf(
  chart: Chart,
  { left, right, top, bottom }: Margins,
  placesIn: (frame: Frame) => Place[],
): Drawn {
  const svg = chart as SVGSVGElement;
  const [width, height] = [Number(svg.getAttribute('width')), Number(svg.getAttribute('height'))];
  const frame = { left, right: width - right, top, bottom: height - bottom };
  return { svg, frame, places: placesIn(frame) };
}
