/** A fit as pictures want it: points, curves and bands in units of display, series by series. */
import type { FitAxes, ResultFit } from '../generated/contract';
import { linearUnit } from './time';

export interface FitDot {
  x: number;
  y: number;
  residual: number;
  predicted: number;
  /** Counts for less than half: an outlier. */
  light: boolean;
  line: number;
}

export interface BandPoint {
  x: number;
  y: number;
  low: number;
  high: number;
}

export interface FitSeries {
  name: string;
  /** Position in the palette, the dashes and the symbols: 1 to 5. */
  style: number;
  dots: FitDot[];
  curve: BandPoint[];
}

export interface FitPicture {
  title: string;
  xLabel: string;
  yLabel: string;
  residualLabel: string;
  series: FitSeries[];
  /** From where to where along the axis: the same for curve and residuals. */
  domain: [number, number];
}

interface Scale {
  unit: string;
  factor: number;
  offset: number;
  /** Of a difference, such as a residual. */
  apart: string;
}

/** How the units of the core's axes are shown. */
const scales: Record<string, Scale> = {
  K: { unit: '°C', factor: 1, offset: -273.15, apart: 'K' },
  'kg/m²': { unit: 'g/m²', factor: 1e3, offset: 0, apart: 'g/m²' },
  'kg/kg': { unit: 'g/kg', factor: 1e3, offset: 0, apart: 'g/kg' },
  '1': { unit: '%', factor: 100, offset: 0, apart: '%' },
};

const bare: Scale = { unit: '', factor: 1, offset: 0, apart: '' };

function scaleOf(unit: string, most: number): Scale {
  if (unit !== 's') return scales[unit] ?? bare;
  const { seconds, name } = linearUnit(most);
  return { unit: name, factor: 1 / seconds, offset: 0, apart: name };
}

const titled = (axis: string, unit: string): string => `${axis}${unit ? ` (${unit})` : ''}`;
const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

export function fitPicture(fit: ResultFit, residual: string): FitPicture {
  const axes: FitAxes = fit.axes;
  const most = Math.max(0, ...fit.points.map((p) => p.x), ...fit.curves.flatMap((c) => c.x.slice(-1)));
  const [x, y] = [scaleOf(axes.x_unit, most), scaleOf(axes.y_unit, 0)];
  const across = (v: number): number => v * x.factor + x.offset;
  const up = (v: number): number => v * y.factor + y.offset;
  const ends = [...fit.points.map((p) => p.x), ...fit.curves.flatMap((c) => c.x)].map(across);
  const names = [...new Set([...fit.points.map((p) => p.series), ...fit.curves.map((c) => c.series)])];
  return {
    title: capital(axes.y),
    domain: [Math.min(...ends), Math.max(...ends)],
    xLabel: titled(axes.x, x.unit),
    yLabel: titled(axes.y, y.unit),
    residualLabel: titled(residual, y.apart),
    series: names.map((name, i) => ({
      name,
      style: 1 + (i % 5),
      dots: fit.points
        .filter((p) => p.series === name)
        .map((p) => ({
          x: across(p.x),
          y: up(p.y),
          residual: p.residual * y.factor,
          predicted: up(p.predicted),
          light: p.weight < 0.5,
          line: p.line,
        })),
      curve: fit.curves
        .filter((c) => c.series === name)
        .flatMap((c) =>
          c.x.map((at, k) => ({
            x: across(at),
            y: up(c.y[k] ?? NaN),
            low: up(c.low[k] ?? NaN),
            high: up(c.high[k] ?? NaN),
          })),
        ),
    })),
  };
}
