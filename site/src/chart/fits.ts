/** A fit as pictures want it: points, curves and bands in units of display, series by series. */
import type { FitAxes, ResultFit } from '../generated/contract';
import { trial } from '../text/trial';
import { number } from '../text/quantity';
import type { Reading } from './reading';
import { differenceOf, shownDifference, shownIn, unitOf, withUnit, type Quantity } from './scale';
import type { KeyEntry } from './signs';
import { numbers, words, type Table } from './table';
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
  /** Position in the palette, the dashes and the symbols (lines.ts), from 1. */
  style: number;
  dots: FitDot[];
  curve: BandPoint[];
}

export interface FitPicture {
  title: string;
  xName: string;
  yName: string;
  xLabel: string;
  yLabel: string;
  residualLabel: string;
  /** Units of the axes and of a residual. */
  units: { x: string; y: string; apart: string };
  series: FitSeries[];
  /** From where to where along the axis: the same for curve and residuals. */
  domain: [number, number];
}

/** An axis: SI to what is shown, for values and for differences such as residuals. */
interface Scale {
  unit: string;
  apart: string;
  value(si: number): number;
  difference(si: number): number;
}

/** What the units of the core's axes measure. */
const quantities: Readonly<Record<string, Quantity>> = {
  K: 'temperature',
  'kg/m²': 'coat',
  'kg/kg': 'water',
  '1': 'share',
};

const same = (v: number): number => v;

function axisScale(unit: string, most: number): Scale {
  const of = quantities[unit];
  if (of) {
    return {
      unit: unitOf(of),
      apart: differenceOf(of),
      value: (v) => shownIn(v, of),
      difference: (v) => shownDifference(v, of),
    };
  }
  if (unit !== 's') return { unit: '', apart: '', value: same, difference: same };
  const { seconds, name } = linearUnit(most);
  const inUnit = (v: number): number => v / seconds;
  return { unit: name, apart: name, value: inUnit, difference: inUnit };
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

export function fitPicture(fit: ResultFit, residual: string): FitPicture {
  const axes: FitAxes = fit.axes;
  const most = Math.max(0, ...fit.points.map((p) => p.x), ...fit.curves.flatMap((c) => c.x.slice(-1)));
  const [x, y] = [axisScale(axes.x_unit, most), axisScale(axes.y_unit, 0)];
  const [across, up] = [x.value, y.value];
  const ends = [...fit.points.map((p) => p.x), ...fit.curves.flatMap((c) => c.x)].map(across);
  const names = [...new Set([...fit.points.map((p) => p.series), ...fit.curves.map((c) => c.series)])];
  return {
    title: capital(axes.y),
    domain: [Math.min(...ends), Math.max(...ends)],
    xName: axes.x,
    yName: axes.y,
    xLabel: withUnit(axes.x, x.unit),
    yLabel: withUnit(axes.y, y.unit),
    residualLabel: withUnit(residual, y.apart),
    units: { x: x.unit, y: y.unit, apart: y.apart },
    series: names.map((name, i) => ({
      name,
      style: 1 + i,
      dots: fit.points
        .filter((p) => p.series === name)
        .map((p) => ({
          x: across(p.x),
          y: up(p.y),
          residual: y.difference(p.residual),
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

/** Every measured point with its series, from left to right: what a cursor stops at. */
export const fitStops = ({ series }: FitPicture): { series: FitSeries; dot: FitDot }[] =>
  series
    .flatMap((one) => one.dots.map((dot) => ({ series: one, dot })))
    .toSorted((a, b) => a.dot.x - b.dot.x);

export function readFit(picture: FitPicture, stop: number): Reading {
  const t = trial.answer;
  const found = fitStops(picture)[stop];
  if (!found) return { where: '', values: [] };
  const { series, dot } = found;
  const { x, y, apart } = picture.units;
  const amount = (v: number, unit: string): string => (unit ? `${number(v)} ${unit}` : number(v));
  return {
    where: [series.name, amount(dot.x, x), dot.line ? `${t.line} ${dot.line}` : '']
      .filter(Boolean)
      .join(', '),
    values: [
      {
        name: dot.light ? `${t.measured} (${t.outlier})` : t.measured,
        value: amount(dot.y, y),
        sign: dot.light ? { kind: 'outlier' } : { kind: 'series', style: series.style, curve: false },
      },
      { name: t.curve, value: amount(dot.predicted, y) },
      { name: t.residual, value: amount(dot.residual, apart) },
    ],
  };
}

/** The points with what the curve makes of them. */
export function fitTable(picture: FitPicture): Table {
  const t = trial.answer;
  const { x, y, apart } = picture.units;
  return {
    columns: [
      words(t.series),
      words(t.line),
      numbers(picture.xName, x),
      numbers(picture.yName, y),
      numbers(t.curve, y),
      numbers(t.residual, apart),
      words(t.remark),
    ],
    rows: picture.series.flatMap((s) =>
      s.dots.map((d) => [
        s.name,
        d.line ? String(d.line) : '',
        d.x,
        d.y,
        d.predicted,
        d.residual,
        d.light ? t.outlier : '',
      ]),
    ),
  };
}

/** The fitted curves with their bands. */
export const curvesTable = ({ series, units, xName, yName }: FitPicture): Table => ({
  columns: [
    words(trial.answer.series),
    numbers(xName, units.x),
    numbers(yName, units.y),
    numbers(trial.answer.low, units.y),
    numbers(trial.answer.high, units.y),
  ],
  rows: series.flatMap((s) => s.curve.map((c) => [s.name, c.x, c.y, c.low, c.high])),
});

export function fitKey({ series }: FitPicture): KeyEntry[] {
  const t = trial.answer;
  const outliers = series.some((s) => s.dots.some((d) => d.light));
  return [
    ...series.map(({ name, style, curve }): KeyEntry => ({
      sign: { kind: 'series', style, curve: curve.length > 0 },
      words: [name, curve.length > 0 ? `${t.measured}; ${t.band}` : t.measured].filter(Boolean).join(': '),
    })),
    ...(outliers ? [{ sign: { kind: 'outlier' }, words: t.outlier } as const] : []),
  ];
}
