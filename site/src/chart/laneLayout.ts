/** Where everything in the lane picture stands, in pixels: bands, flags with their symbols and stems, deadlines. */
import type { MarkName } from '../generated/contract';
import { pictures } from '../text/pictures';
import { placeFlags, rowsOf, type Placed } from './flags';
import type { FilmState, Lane, LanePicture } from './lanes';
import { textWidth } from './measure';

/** Sizes in pixels: on the screen, and on a printed sheet that must hold more on less height. */
export interface Sizes {
  font: number;
  row: number;
  band: number;
  heat: number;
  gap: number;
}
const roomy: Sizes = { font: 12, row: 17, band: 24, heat: 8, gap: 20 };
const dense: Sizes = { font: 11.5, row: 13, band: 17, heat: 6, gap: 6 };

/** A label beside its stem; that of a mark begins with the mark's symbol, at the head of the stem. */
export interface Flag {
  x: number;
  y: number;
  stem: [from: number, to: number];
  words: string;
  side: Placed['side'];
  mark: MarkName | null;
}

export interface Laid {
  lane: Lane;
  title: number;
  top: number;
  bottom: number;
  foot: number;
  /** How far down the line of the deadline runs: past its own label, through no other. */
  deadline: number;
  flags: Flag[];
}

export interface Layout {
  sizes: Sizes;
  narrow: boolean;
  left: number;
  right: number;
  height: number;
  lanes: Laid[];
  /** The place of a time on the axis, and the time of a place. */
  place(time: number): number;
  time(x: number): number;
}

/** Half the width of a symbol and the gap behind it: as far as words stand from a stem that carries one. */
export const besideSymbol = 10;
export const besideStem = 4;

export function layOut({ lanes, low, high }: LanePicture, width: number, onPaper: boolean): Layout {
  const sizes = onPaper ? dense : roomy;
  const narrow = width < 640;
  const left = narrow ? 8 : 16 + Math.max(...lanes.map((l) => textWidth(l.title, 13, 700)));
  const right = 14;
  const span = width - left - right;
  const place = (t: number): number =>
    left + (Math.log(Math.max(t, low) / low) / Math.log(high / low)) * span;
  const time = (x: number): number => low * (high / low) ** ((x - left) / span);
  let y = 26;
  const laid = lanes.map((lane) => {
    const one = layLane(lane, y, place, width - right, narrow, sizes);
    y = one.foot + sizes.gap;
    return one;
  });
  return { sizes, narrow, left, right, height: y + 22, lanes: laid, place, time };
}

function layLane(
  lane: Lane,
  y: number,
  place: (t: number) => number,
  edge: number,
  narrow: boolean,
  { font, row, band, heat }: Sizes,
): Laid {
  const over = lane.marks.map((m) => ({ x: place(m.time), words: `${m.label} ${m.text}`, mark: m.name }));
  const under = [
    { x: place(lane.deadline.time), words: `${pictures.lanes.deadline} ${lane.deadline.text}`, mark: null },
    ...(lane.exit
      ? [{ x: place(lane.exit.time), words: `${pictures.lanes.out} ${lane.exit.text}`, mark: null }]
      : []),
  ];
  const put = (list: { x: number; words: string }[], beside: number): Placed[] =>
    placeFlags(
      list.map((w) => ({ x: w.x, width: textWidth(w.words, font) + beside + 2 })),
      edge,
      besideSymbol,
    );
  const [above, below] = [put(over, besideSymbol), put(under, besideStem)];
  const title = y + (narrow ? 10 : 0);
  const top = y + (narrow ? 24 : 4) + rowsOf(above) * row + 6;
  const bottom = top + band + (lane.heat.length > 0 ? heat + 2 : 0);
  const foot = bottom + 4 + rowsOf(below) * row;
  const stand = (
    words: Pick<Flag, 'x' | 'words' | 'mark'>[],
    placed: readonly Placed[],
    height: (row: number) => number,
    stem: (y: number) => Flag['stem'],
  ): Flag[] =>
    words.map((word, i) => {
      const { row: n, side } = placed[i] ?? { row: 0, side: 'right' };
      return { ...word, side, y: height(n), stem: stem(height(n)) };
    });
  const marks = stand(
    over,
    above,
    (n) => top - 12 - n * row,
    (at) => [at, top],
  );
  const limits = stand(
    under,
    below,
    (n) => bottom + 12 + n * row,
    (at) => [top + band, at + 6],
  );
  return {
    lane,
    title,
    top,
    bottom,
    foot,
    deadline: limits[0]?.stem[1] ?? foot,
    flags: [...marks, ...limits],
  };
}

export interface BandWord {
  state: FilmState;
  x: number;
  y: number;
  words: string;
}

/** The name of the state inside its band, where there is room for it beside the deadline. */
export function bandWords({ lanes, place, sizes }: Layout): BandWord[] {
  return lanes.flatMap((l) =>
    l.lane.bands.flatMap((b) => {
      const words = pictures.lanes.statesDone[b.state];
      const need = textWidth(words, sizes.font, 600) + 20;
      const [from, to] = [place(b.from), place(b.to)];
      const cuts = [from, place(l.lane.deadline.time), to].filter((x) => x >= from && x <= to);
      const gaps = cuts.slice(1).map((end, i) => ({ from: cuts[i] ?? end, to: end }));
      const widest = gaps.sort((p, q) => q.to - q.from - (p.to - p.from))[0];
      if (!widest || widest.to - widest.from < need) return [];
      return [{ state: b.state, x: (widest.from + widest.to) / 2, y: l.top + sizes.band / 2 + 1, words }];
    }),
  );
}
