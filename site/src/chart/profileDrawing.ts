/** Draws cuts through the film at a few moments. Every line ends in a letter that the legend explains. */
import type { ProfilePicture } from './curves';
import type { Plot } from './plot';

export function drawProfiles(plot: Plot, picture: ProfilePicture, width: number): SVGElement | HTMLElement {
  const height = Math.round(Math.min(300, Math.max(220, width * 0.5)));
  const last = Math.max(1, picture.lines.length - 1);
  const ends = picture.lines.flatMap((l) => {
    const end = l.points.at(-1);
    return end ? [{ ...end, key: l.key }] : [];
  });
  return plot.plot({
    className: 'plot',
    width,
    height,
    marginLeft: 46,
    marginRight: 14,
    marginTop: 22,
    marginBottom: 36,
    style: { fontSize: '11.5px' },
    ariaLabel: picture.title,
    x: { zero: true, nice: true, label: null },
    y: { domain: [0, 1], label: null },
    marks: [
      plot.gridX({ stroke: 'var(--line)', strokeOpacity: 1 }),
      plot.ruleY([0, 1], { stroke: 'var(--edge)' }),
      plot.axisX({ label: picture.xLabel, labelAnchor: 'right', labelArrow: 'none', tickSize: 4, ticks: 6 }),
      plot.axisY({ label: null, tickSize: 0, ticks: 5 }),
      ...picture.lines.map((l, i) =>
        plot.line(l.points, {
          x: 'x',
          y: 'y',
          stroke: 'var(--line-1)',
          strokeOpacity: 0.35 + (0.65 * i) / last,
          strokeWidth: 1.2 + (1.4 * i) / last,
        }),
      ),
      plot.text(ends, {
        x: 'x',
        y: 'y',
        text: 'key',
        dy: -8,
        fontWeight: 700,
        fill: 'var(--ink)',
        stroke: 'var(--surface)',
        strokeWidth: 3,
      }),
    ],
  });
}
