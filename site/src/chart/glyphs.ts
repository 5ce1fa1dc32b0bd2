/** Signs of the marks, drawn around the origin. They stay apart in shape, as in the picture of the routes. */
import type { MarkName } from '../generated/contract';

export interface Glyph {
  d: string;
  /** Drawn as strokes, because it has no inside. */
  open: boolean;
}

const polygon = (corners: number, size: number, turn = 0): string =>
  `M${Array.from({ length: corners }, (_, i) => {
    const angle = turn - Math.PI / 2 + (2 * Math.PI * i) / corners;
    return `${(size * Math.cos(angle)).toFixed(2)} ${(size * Math.sin(angle)).toFixed(2)}`;
  }).join('L')}Z`;
const spokes = (count: number, size: number): string =>
  Array.from({ length: count }, (_, i) => {
    const angle = Math.PI / 2 + (Math.PI * i) / count;
    const [x, y] = [(size * Math.cos(angle)).toFixed(2), (size * Math.sin(angle)).toFixed(2)];
    return `M${x} ${y}L${-Number(x)} ${-Number(y)}`;
  }).join('');

const circle = 'M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.500 0 1 0-9 0Z';

export const glyphs: Readonly<Record<MarkName, Glyph>> = {
  open: { d: circle, open: true },
  touch: { d: polygon(3, 5.6), open: false },
  tack_free: { d: polygon(4, 5.6), open: false },
  dry_through: { d: polygon(4, 5.8, Math.PI / 4), open: false },
  cured: { d: polygon(6, 5.2), open: false },
  cool: { d: spokes(3, 5.4), open: true },
  ready: { d: circle, open: false },
};
