/** Draws the lane picture. Heights are laid out here in pixels; Plot scales the axis of time and makes the SVG. */
import type { MarkName } from '../generated/contract';
import { text } from '../text';
import { duration } from '../text/quantity';
import { placeFlags, rowsOf, type Placed } from './flags';
import type { FilmState, Lane, LanePicture } from './lanes';
import { definitions, fillOf } from './patterns';
import { textWidth, type Plot } from './plot';
import { tickLabel, ticksWithin } from './time';

/** Sizes in pixels: on the screen, and on a printed sheet that must hold more on less height. */
interface Sizes {
  font: number;
  row: number;
  band: number;
  heat: number;
  gap: number;
}
const roomy: Sizes = { font: 12, row: 17, band: 24, heat: 8, gap: 20 };
const dense: Sizes = { font: 11.5, row: 13, band: 17, heat: 6, gap: 8 };

interface Word {
  x: number;
  y: number;
  stem: [number, number];
  words: string;
  side: Placed['side'];
  strong: boolean;
}

interface Laid {
  lane: Lane;
  title: number;
  top: number;
  bottom: number;
  foot: number;
  over: Word[];
  under: Word[];
}

/** Symbols that stay apart in shape, so that a mark is known without colour. */
const symbols: Record<MarkName, string> = {
  open: 'circle',
  touch: 'triangle',
  tack_free: 'diamond',
  dry_through: 'square',
  cured: 'hexagon',
  cool: 'asterisk',
  ready: 'star',
};

export function drawLanes(
  plot: Plot,
  picture: LanePicture,
  width: number,
  prefix: string,
  onPaper = false,
): SVGElement | HTMLElement {
  const sizes = onPaper ? dense : roomy;
  const { font, band, heat } = sizes;
  const narrow = width < 640;
  const left = narrow ? 4 : 16 + Math.max(...picture.lanes.map((l) => textWidth(l.title, 13, 700)));
  const right = 14;
  const { low, high } = picture;
  const scale = (t: number): number =>
    left + (Math.log(Math.max(t, low) / low) / Math.log(high / low)) * (width - left - right);
  let y = 26;
  const laid = picture.lanes.map((lane) => {
    const one = layLane(lane, y, scale, width - right, narrow, sizes);
    y = one.foot + sizes.gap;
    return one;
  });
  const height = y + 22;

  const ticks = ticksWithin(low, high);
  const bands = laid.flatMap((l) => l.lane.bands.map((b) => ({ ...b, from: Math.max(b.from, low), l })));
  const heats = laid.flatMap((l) => l.lane.heat.map((h) => ({ ...h, from: Math.max(h.from, low), l })));
  const words = laid.flatMap((l) => [...l.over, ...l.under]);
  const marks = laid.flatMap((l) => l.lane.marks.map((m) => ({ ...m, l })));

  const drawn = plot.plot({
    className: 'plot',
    width,
    height,
    marginLeft: left,
    marginRight: right,
    marginTop: 22,
    marginBottom: 26,
    style: { fontSize: `${font}px` },
    ariaLabel: text.lanes.alt,
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
      plot.ruleX(words, {
        x: (w: Word) => invert(w.x),
        y1: (w: Word) => w.stem[0],
        y2: (w: Word) => w.stem[1],
        stroke: 'var(--edge)',
      }),
      ...bands.map((b) =>
        plot.rect([b], {
          x1: 'from',
          x2: 'to',
          y1: () => b.l.top,
          y2: () => b.l.top + band,
          fill: fillOf(b.state, prefix),
          stroke: 'var(--ink)',
          strokeWidth: 0.75,
        }),
      ),
      // The deadline runs through the whole lane; a pale line below keeps it apart from dark states.
      plot.ruleX(laid, {
        x: (l: Laid) => l.lane.deadline,
        y1: (l: Laid) => l.top,
        y2: (l: Laid) => l.top + band,
        stroke: 'var(--surface)',
        strokeWidth: 4,
      }),
      plot.ruleX(laid, {
        x: (l: Laid) => l.lane.deadline,
        y1: (l: Laid) => l.top - 4,
        y2: (l: Laid) => l.foot,
        stroke: 'var(--bad)',
        strokeWidth: 2,
        strokeDasharray: '5 3',
      }),
      ...heats.map((h) =>
        plot.rect([h], {
          x1: 'from',
          x2: 'to',
          y1: () => h.l.top + band + 2,
          y2: () => h.l.top + band + 2 + heat,
          fill: fillOf(h.cooling ? 'cooling' : 'heated', prefix),
          stroke: 'var(--heat)',
          strokeWidth: 0.75,
        }),
      ),
      ...bandWords(laid, scale, sizes).map((w) =>
        plot.text([w], {
          x: () => invert(w.x),
          y: 'y',
          text: 'words',
          fill: w.state === 'wet' ? 'var(--on-wet)' : 'var(--on-pale)',
          stroke: `var(--${w.state})`,
          strokeWidth: 5,
          fontWeight: 600,
        }),
      ),
      ...marks.map((m) =>
        plot.dot([m], {
          x: 'time',
          y: () => m.l.top,
          r: m.name === 'ready' ? 6.5 : 4.5,
          symbol: symbols[m.name] as 'circle',
          fill: m.name === 'open' ? 'var(--surface)' : m.name === 'ready' ? 'var(--accent)' : 'var(--ink)',
          stroke: m.name === 'cool' || m.name === 'open' ? 'var(--ink)' : 'var(--surface)',
          strokeWidth: 1.4,
        }),
      ),
      ...(['right', 'left'] as const).map((side) =>
        plot.text(
          words.filter((w) => w.side === side),
          {
            x: (w: Word) => invert(w.x),
            y: 'y',
            dx: side === 'right' ? 4 : -4,
            text: 'words',
            textAnchor: side === 'right' ? 'start' : 'end',
            fill: 'var(--ink)',
            stroke: 'var(--surface)',
            strokeWidth: 4,
            fontSize: font,
          },
        ),
      ),
      plot.text(laid, {
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
  drawn.prepend(definitions(prefix));
  return drawn;

  function invert(x: number): number {
    return low * (high / low) ** ((x - left) / (width - left - right));
  }
}

function layLane(
  lane: Lane,
  y: number,
  scale: (t: number) => number,
  edge: number,
  narrow: boolean,
  { font, row, band, heat }: Sizes,
): Laid {
  const over = lane.marks.map((m) => ({
    x: scale(m.time),
    words: `${m.label} ${m.text}`,
    strong: m.name === 'ready',
  }));
  const below = [
    { x: scale(lane.deadline), words: `${text.lanes.deadline} ${duration(lane.deadline)}`, strong: true },
    ...(lane.exit
      ? [{ x: scale(lane.exit.time), words: `${text.lanes.out} ${lane.exit.text}`, strong: false }]
      : []),
  ];
  const flags = (list: { x: number; words: string }[]): Placed[] =>
    placeFlags(
      list.map((w) => ({ x: w.x, width: textWidth(w.words, font) + 6 })),
      edge,
    );
  const overPlaced = flags(over);
  const belowPlaced = flags(below);
  const title = y + (narrow ? 10 : 0);
  const top = y + (narrow ? 24 : 4) + rowsOf(overPlaced) * row + 6;
  const bottom = top + band + (lane.heat.length > 0 ? heat + 2 : 0);
  const foot = bottom + 4 + rowsOf(belowPlaced) * row;
  return {
    lane,
    title,
    top,
    bottom,
    foot,
    over: over.map((w, i) => {
      const p = overPlaced[i] ?? { row: 0, side: 'right' as const };
      const at = top - 12 - p.row * row;
      return { ...w, y: at, side: p.side, stem: [at - 6, top] };
    }),
    under: below.map((w, i) => {
      const p = belowPlaced[i] ?? { row: 0, side: 'right' as const };
      const at = bottom + 12 + p.row * row;
      return { ...w, y: at, side: p.side, stem: [top + band, at + 6] };
    }),
  };
}

interface BandWord {
  state: FilmState;
  x: number;
  y: number;
  words: string;
}

/** The name of the state inside its band, where there is room for it beside the deadline. */
function bandWords(laid: readonly Laid[], scale: (t: number) => number, { font, band }: Sizes): BandWord[] {
  return laid.flatMap((l) =>
    l.lane.bands.flatMap((b) => {
      const words = text.lanes.statesDone[b.state];
      const need = textWidth(words, font, 600) + 20;
      const cuts = [scale(b.from), scale(l.lane.deadline), scale(b.to)].filter(
        (x) => x >= scale(b.from) && x <= scale(b.to),
      );
      const gaps = cuts.slice(1).map((to, i) => ({ from: cuts[i] ?? to, to }));
      const widest = gaps.sort((p, q) => q.to - q.from - (p.to - p.from))[0];
      if (!widest || widest.to - widest.from < need) return [];
      return [{ state: b.state, x: (widest.from + widest.to) / 2, y: l.top + band / 2 + 1, words }];
    }),
  );
}
