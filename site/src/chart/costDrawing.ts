/** Draws what a day costs on each route against its quantity: steps where a further unit is needed. */
import type { CostPicture } from './costs';
import { colourOf, dashOf, weightOf } from './lines';
import * as plot from './marks';
import { lineNames } from './names';
import { drawnOf, marginsOf, pixels, sideways, upwards } from './paper';
import type { Drawn } from './reading';

const margin = { left: 54, right: 12, top: 14, bottom: 26 };

export function drawCosts({ lines, asked }: CostPicture, width: number): Drawn {
  const chart = plot.plot({
    className: 'plot',
    width,
    height: Math.round(Math.min(320, Math.max(220, width * 0.45))),
    ...marginsOf(margin),
    x: { label: null, grid: false },
    y: { label: null, zero: true, nice: 5, grid: false, tickSize: 0 },
    marks: [
      ...upwards(),
      sideways(width),
      ...(asked === null ? [] : [plot.ruleX([asked], { stroke: 'var(--ink)', strokeDasharray: '2 3' })]),
      ...lines.map((l) =>
        plot.line(l.points, {
          x: 'x',
          y: 'y',
          stroke: colourOf(l.style),
          // What misses its goal is dotted and thin: it is there to compare, not to choose.
          strokeWidth: l.met ? weightOf(l.style) : 1.4,
          strokeDasharray: l.met ? dashOf(l.style) : '1.2 3.2',
          strokeOpacity: l.met ? 1 : 0.8,
        }),
      ),
    ],
  });
  const at = pixels(chart);
  const drawn = drawnOf(chart, margin, () =>
    (lines[0]?.points ?? []).map(({ x }, i) => ({
      ...at(x, 0),
      dots: lines.map((l) => at(x, l.points[i]?.y ?? NaN)),
    })),
  );
  const named = lines.map((l) => ({ ...l, points: l.points.map((p) => at(p.x, p.y)) }));
  drawn.svg.append(lineNames(named, drawn.frame));
  return drawn;
}
