/** Draws the lane picture as it was laid out; Plot makes the SVG and knows the axis of time. */
import type { MarkName } from '../generated/contract';
import { pictures } from '../text/pictures';
import {
  bandWords,
  besideStem,
  besideSymbol,
  layOut,
  type BandWord,
  type Flag,
  type Laid,
} from './laneLayout';
import { allEvents, type LanePicture } from './lanes';
import * as plot from './marks';
import { drawnOf, marginsOf } from './paper';
import type { Drawn } from './reading';
import { group, textured } from './textures';
import { tickLabel, ticksWithin } from './time';

/** Symbols that stay apart in shape, so that a mark is known without colour. */
const symbols = {
  open: 'circle',
  touch: 'triangle',
  tack_free: 'diamond',
  dry_through: 'square',
  cured: 'hexagon',
  cool: 'asterisk',
  ready: 'star',
} as const satisfies Record<MarkName, string>;

export function drawLanes(picture: LanePicture, width: number, onPaper = false): Drawn {
  const layout = layOut(picture, width, onPaper);
  const { left, right, height, lanes, narrow, place, time, sizes } = layout;
  const { font, band, heat } = sizes;
  const { low, high } = picture;
  const ticks = ticksWithin(low, high);
  const flags = lanes.flatMap((l) => l.flags);
  const x = (at: { x: number }): number => time(at.x);

  const box = (from: number, to: number, y: number, tall: number) => ({
    x: place(from),
    y,
    width: Math.max(place(to) - place(from), 1),
    height: tall,
  });
  const bands = (): SVGElement =>
    group(
      lanes.flatMap((l) => [
        ...l.lane.bands.map((b) => textured(b.state, box(b.from, b.to, l.top, band), 'var(--ink)')),
        ...l.lane.heat.map((h) =>
          textured(
            h.cooling ? 'cooling' : 'heated',
            box(h.from, h.to, l.top + band + 2, heat),
            'var(--heat)',
          ),
        ),
      ]),
    );

  const margin = { left, right, top: 22, bottom: 26 };
  const chart = plot.plot({
    className: 'plot',
    width,
    height,
    ...marginsOf(margin),
    style: { fontSize: `${font}px` },
    ariaLabel: pictures.lanes.alt,
    x: { type: 'log', domain: [low, high], axis: null },
    y: { type: 'identity', axis: null },
    marks: [
      plot.gridX(ticks, { stroke: 'var(--line)', strokeOpacity: 1 }),
      ...(['top', 'bottom'] as const).map((frameAnchor) =>
        plot.text(ticks, {
          x: (t: number) => t,
          text: tickLabel,
          frameAnchor,
          dy: frameAnchor === 'top' ? -12 : 14,
          fill: 'var(--muted)',
        }),
      ),
      plot.ruleX(flags, {
        x,
        y1: (f: Flag) => f.stem[0],
        y2: (f: Flag) => f.stem[1],
        stroke: 'var(--edge)',
      }),
      bands,
      // The deadline runs through the whole lane; a pale line below keeps it apart from dark states.
      plot.ruleX(lanes, {
        x: (l: Laid) => l.lane.deadline.time,
        y1: (l: Laid) => l.top,
        y2: (l: Laid) => l.top + band,
        stroke: 'var(--surface)',
        strokeWidth: 5,
      }),
      plot.ruleX(lanes, {
        x: (l: Laid) => l.lane.deadline.time,
        y1: (l: Laid) => l.top - 4,
        y2: (l: Laid) => l.deadline,
        stroke: 'var(--bad)',
        strokeWidth: 2,
        strokeDasharray: '5 3',
      }),
      ...bandWords(layout).map((w) =>
        plot.text([w], {
          x,
          y: 'y',
          text: (b: BandWord) => b.words,
          fill: w.state === 'wet' ? 'var(--on-wet)' : 'var(--on-pale)',
          stroke: `var(--${w.state})`,
          strokeWidth: 5,
          fontWeight: 600,
        }),
      ),
      ...(['right', 'left'] as const).flatMap((side) =>
        [true, false].map((marked) => {
          const beside = marked ? besideSymbol : besideStem;
          return plot.text(
            flags.filter((f) => f.side === side && (f.mark !== null) === marked),
            {
              x,
              y: 'y',
              dx: side === 'right' ? beside : -beside,
              text: 'words',
              textAnchor: side === 'right' ? 'start' : 'end',
              fill: 'var(--ink)',
              stroke: 'var(--surface)',
              strokeWidth: 4,
              fontSize: font,
            },
          );
        }),
      ),
      ...flags.flatMap((f) => (f.mark === null ? [] : [symbol(f, f.mark, x)])),
      plot.text(lanes, {
        x: () => low,
        y: (l: Laid) => (narrow ? l.title : l.top + band / 2),
        dx: narrow ? 0 : -10,
        textAnchor: narrow ? 'start' : 'end',
        text: (l: Laid) => l.lane.title,
        fontWeight: 700,
        fontSize: 13,
        fill: 'var(--ink)',
      }),
    ],
  });
  return drawnOf(chart, margin, () =>
    allEvents(picture).map((e) => {
      const one = lanes[e.lane];
      const y = one ? one.top + band / 2 : 0;
      return { x: place(e.time), y, dots: [{ x: place(e.time), y }] };
    }),
  );
}

function symbol(flag: Flag, mark: MarkName, x: (f: Flag) => number): plot.Dot {
  const ready = mark === 'ready';
  const hollow = mark === 'open' || mark === 'cool';
  return plot.dot([flag], {
    x,
    y: 'y',
    r: ready ? 5.2 : 4.2,
    symbol: symbols[mark],
    fill: mark === 'open' ? 'var(--surface)' : ready ? 'var(--accent)' : 'var(--ink)',
    stroke: hollow ? 'var(--ink)' : 'var(--surface)',
    strokeWidth: 1.4,
  });
}
