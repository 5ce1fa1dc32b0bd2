/** Draws what a day costs on each route against its quantity: steps where a further unit is needed. */
import { number } from '../text/quantity';
import { colourOf, dashes, weightOf } from './lines';
import * as plot from './marks';

export interface CostLine {
  name: string;
  style: number;
  points: readonly { x: number; y: number }[];
}

export interface CostPicture {
  lines: readonly CostLine[];
  /** The quantity that was asked about. */
  asked: number | null;
}

export function drawCosts({ lines, asked }: CostPicture, width: number): SVGElement | HTMLElement {
  const readings = (lines[0]?.points ?? []).map((p, i) => {
    const costs = lines.map((l) => `${l.name}: ${number(l.points[i]?.y ?? NaN)}`);
    return { ...p, words: [number(p.x, 'm²'), ...costs].join('\n') };
  });
  return plot.plot({
    className: 'plot',
    width,
    height: Math.round(Math.min(320, Math.max(220, width * 0.45))),
    marginLeft: 54,
    marginRight: 12,
    marginTop: 14,
    marginBottom: 26,
    x: { label: null, grid: false },
    y: { label: null, zero: true, nice: 5, grid: false, tickSize: 0 },
    marks: [
      plot.gridY({ ticks: 5, stroke: 'var(--line)', strokeOpacity: 1 }),
      plot.axisX({ label: null, tickSize: 4, ticks: Math.max(3, Math.floor(width / 90)) }),
      plot.axisY({ label: null, tickSize: 0, ticks: 5, tickFormat: (v: number) => number(v) }),
      ...(asked === null ? [] : [plot.ruleX([asked], { stroke: 'var(--ink)', strokeDasharray: '2 3' })]),
      ...lines.map((l) =>
        plot.line(l.points, {
          x: 'x',
          y: 'y',
          stroke: colourOf(l.style),
          strokeWidth: weightOf(l.style),
          strokeDasharray: dashes[l.style] ?? '',
        }),
      ),
      plot.ruleX(readings, plot.pointerX({ x: 'x', stroke: 'var(--ink)', strokeWidth: 0.75 })),
      plot.tip(
        readings,
        plot.pointerX({ x: 'x', y: 'y', title: 'words', fontSize: 12, stroke: 'var(--edge)', anchor: 'top' }),
      ),
    ],
  });
}
