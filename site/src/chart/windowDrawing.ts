/** Lays a window of good settings out in pixels: axes, areas, limits, names and marked settings. */
import { textWidth } from './measure';
import { roundTicks } from './ticks';
import { areasOf, seatsOf, type WindowAxis, type WindowPicture, type WindowSpot } from './window';

export const font = 12;
const lineHeight = 15;

export interface WindowTick {
  at: number;
  words: string;
}

export interface WindowName {
  x: number;
  y: number;
  lines: string[];
}

export interface MarkedSpot {
  x: number;
  y: number;
  words: string;
  side: 'start' | 'end';
}

export interface WindowDrawing {
  width: number;
  height: number;
  left: number;
  top: number;
  right: number;
  bottom: number;
  failing: string[];
  good: string;
  limits: string[];
  names: (WindowName | null)[];
  across: WindowTick[];
  upwards: WindowTick[];
  present: MarkedSpot | null;
  robust: MarkedSpot | null;
  /** A setting to pixels and back. */
  place(spot: WindowSpot): { x: number; y: number };
  setting(x: number, y: number): WindowSpot;
}

export interface WindowWords {
  present: string;
  robust: string;
}

export function drawWindow(picture: WindowPicture, wide: number, words: WindowWords): WindowDrawing {
  const upwardsWords = ticksOf(picture.y, 6);
  const left = Math.ceil(Math.max(...upwardsWords.map((t) => textWidth(t.words, font)), 20)) + 12;
  const [top, right] = [26, wide - 12];
  const width = right - left;
  const height = Math.round(Math.min(440, Math.max(240, 0.62 * width)));
  const bottom = top + height;
  const px = (v: number): number => left + ((v - picture.x.low) / (picture.x.high - picture.x.low)) * width;
  const py = (v: number): number =>
    bottom - ((v - picture.y.low) / (picture.y.high - picture.y.low)) * height;
  const { failing, good } = areasOf(picture, width, height);
  const seats = seatsOf(picture);
  const marked = (spot: WindowSpot | null, name: string): MarkedSpot | null => {
    if (!spot || !holds(picture.x, spot.x) || !holds(picture.y, spot.y)) return null;
    const x = px(spot.x);
    return { x, y: py(spot.y), words: name, side: x + 12 + textWidth(name, font) > right ? 'end' : 'start' };
  };
  return {
    width: wide,
    height: bottom + 44,
    ...{ left, top, right, bottom, failing, good },
    limits: picture.boundaries.map(
      (line) => `M${line.map((p) => `${px(p.x).toFixed(1)} ${py(p.y).toFixed(1)}`).join('L')}`,
    ),
    names: seats.map((seat, k) => {
      if (!seat) return null;
      const room = { width: 2 * seat.room * width, height: 2 * seat.room * height };
      const lines = fitted(`${k + 1} ${picture.limits[k] ?? ''}`, room) ?? [String(k + 1)];
      return { x: left + seat.x * width, y: bottom - seat.y * height, lines };
    }),
    across: ticksOf(picture.x, Math.max(3, Math.floor(width / 80))).map((t) => ({ ...t, at: px(t.at) })),
    upwards: upwardsWords.map((t) => ({ ...t, at: py(t.at) })),
    present: marked(picture.present, words.present),
    robust: marked(picture.robust, words.robust),
    place: ({ x, y }) => ({ x: px(x), y: py(y) }),
    setting: (x, y) => ({
      x: within(picture.x, picture.x.low + ((x - left) / width) * (picture.x.high - picture.x.low)),
      y: within(picture.y, picture.y.low + ((bottom - y) / height) * (picture.y.high - picture.y.low)),
    }),
  };
}

const within = ({ low, high }: WindowAxis, v: number): number => Math.min(high, Math.max(low, v));
const holds = ({ low, high }: WindowAxis, v: number): boolean => v >= low && v <= high;

const ticksOf = ({ low, high }: WindowAxis, count: number): WindowTick[] =>
  roundTicks(low, high, count).map((at) => ({ at, words: String(at).replace('-', '\u2212') }));

/** The words in lines that fit a box, or null. */
function fitted(words: string, room: { width: number; height: number }): string[] | null {
  for (let count = 1; count * lineHeight <= room.height - 4; count++) {
    const lines = wrapped(words, room.width - 8);
    if (lines && lines.length <= count) return lines;
  }
  return null;
}

function wrapped(words: string, width: number): string[] | null {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, font, 600) <= width) lines[lines.length - 1] = longer;
    else if (textWidth(word, font, 600) <= width) lines.push(word);
    else return null;
  }
  return lines;
}

/** The lines of a name are laid around its middle. */
export const lineAt = (name: WindowName, k: number): number =>
  name.y + 4 + (k - (name.lines.length - 1) / 2) * lineHeight;
