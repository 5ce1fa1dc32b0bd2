/** Draws cuts through the film at a few moments. Every line carries a letter that the legend explains. */
import { number } from '../text/quantity';
import type { ProfilePicture } from './curves';
import * as plot from './marks';
import { drawnOf, heightOf, marginsOf, pixels } from './paper';
import type { Drawn } from './reading';

const margin = { left: 46, right: 14, top: 22, bottom: 24 };

export function drawProfiles(picture: ProfilePicture, width: number): Drawn {
  const last = Math.max(1, picture.lines.length - 1);
  // Each letter sits at a height of its own, so that lines that end together do not pile them up.
  const letters = picture.lines.flatMap((l, i) => {
    const at = l.points[Math.round((l.points.length - 1) * (0.3 + (0.6 * i) / (last + 1)))];
    return at ? [{ ...at, key: l.key }] : [];
  });
  const chart = plot.plot({
    className: 'plot',
    width,
    height: heightOf(width),
    ...marginsOf(margin),
    style: { fontSize: '11.5px' },
    ariaLabel: picture.title,
    // The inset keeps lines at zero, and their letters, off the labels of the other axis.
    x: { zero: true, nice: true, label: null, inset: 8 },
    y: { domain: [0, 1], label: null },
    marks: [
      plot.gridX({ ticks: 6, stroke: 'var(--line)', strokeOpacity: 1 }),
      plot.ruleY([0, 1], { stroke: 'var(--edge)' }),
      plot.axisX({ label: null, tickSize: 4, ticks: 6, tickFormat: (v: number) => number(v) }),
      plot.axisY({ label: null, tickSize: 0, ticks: 5, tickFormat: (v: number) => number(v) }),
      ...picture.lines.map((l, i) =>
        plot.line(l.points, {
          x: 'x',
          y: 'y',
          stroke: 'var(--line-1)',
          strokeOpacity: 0.55 + (0.45 * i) / last,
          strokeWidth: 1.2 + (1.4 * i) / last,
        }),
      ),
      plot.text(letters, {
        x: 'x',
        y: 'y',
        text: 'key',
        fontWeight: 700,
        fill: 'var(--ink)',
        stroke: 'var(--surface)',
        strokeWidth: 5,
      }),
    ],
  });
  const at = pixels(chart);
  return drawnOf(chart, margin, (frame) =>
    (picture.lines[0]?.points ?? []).map(({ y }, i) => ({
      x: frame.left,
      y: at(0, y).y,
      dots: picture.lines.map((l) => at(l.points[i]?.x ?? NaN, y)),
    })),
  );
}
