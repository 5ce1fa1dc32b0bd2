/** Signs as a key shows them, each in a box of 26 by 14: pieces of lines, textures, symbols. The page and an exported picture use the same. */
import type { MarkName } from '../generated/contract';
import { glyphs } from './glyphs';
import { chartLines, colourOf, dashOf, filledSymbol, symbolPath, weightOf } from './lines';
import { element, group, textured, type TextureName } from './textures';

export type Sign =
  | { kind: 'line'; style: number }
  /** A measured point, with a piece of its curve and band where it has one. */
  | { kind: 'series'; style: number; curve: boolean }
  | { kind: 'outlier' }
  | { kind: 'texture'; name: TextureName; edge: string; low?: boolean }
  | { kind: 'letter'; letter: string }
  | { kind: 'mark'; mark: MarkName }
  | { kind: 'deadline' }
  | { kind: 'diamond' }
  /** A line of the moist-air chart itself. */
  | { kind: 'chart'; of: keyof typeof chartLines }
  | { kind: 'failing'; style: number }
  | { kind: 'bar' }
  | { kind: 'error' };

export interface KeyEntry {
  sign: Sign;
  words: string;
}

export const signWidth = 26;
export const signHeight = 14;

export function drawSign(sign: Sign): SVGElement {
  switch (sign.kind) {
    case 'line':
      return lineOf(sign.style, 1, 25);
    case 'failing':
      return lineOf(sign.style, 1, 25, '1.2 3.2');
    case 'series': {
      const colour = colourOf(sign.style);
      const dot = element('path', {
        d: symbolPath(sign.style),
        transform: 'translate(6 7)',
        fill: filledSymbol(sign.style) ? colour : 'var(--surface)',
        stroke: colour,
        'stroke-width': 1.4,
      });
      if (!sign.curve) return dot;
      const band = element('rect', { x: 12, y: 2, width: 14, height: 10, fill: colour, 'fill-opacity': 0.2 });
      return group([band, lineOf(sign.style, 12, 26), dot]);
    }
    case 'outlier':
      return element('path', {
        d: 'M9 3L17 11M17 3L9 11',
        stroke: 'var(--ink)',
        'stroke-width': 1.6,
        fill: 'none',
      });
    case 'texture': {
      const height = sign.low ? 8 : 13;
      return textured(sign.name, { x: 0.5, y: (signHeight - height) / 2, width: 25, height }, sign.edge);
    }
    case 'letter': {
      const made = element('text', {
        x: 13,
        y: 11,
        'text-anchor': 'middle',
        'font-size': 12,
        'font-weight': 700,
        fill: 'var(--ink)',
      });
      made.textContent = sign.letter;
      return made;
    }
    case 'mark': {
      const { d, open } = glyphs[sign.mark];
      return element('path', {
        d,
        transform: 'translate(13 7)',
        fill: open ? 'none' : 'var(--ink)',
        stroke: open ? 'var(--ink)' : 'var(--surface)',
        'stroke-width': 1.4,
      });
    }
    case 'deadline':
      return element('line', {
        x1: 13,
        x2: 13,
        y1: 0,
        y2: 14,
        stroke: 'var(--bad)',
        'stroke-width': 2,
        'stroke-dasharray': '5 3',
      });
    case 'diamond':
      return element('path', {
        d: 'M13 2L18 7L13 12L8 7Z',
        fill: 'var(--surface)',
        stroke: colourOf(4),
        'stroke-width': 1.6,
      });
    case 'bar':
      return element('rect', { x: 1, y: 2, width: 24, height: 10, fill: 'var(--accent)' });
    case 'error':
      return element('path', {
        d: 'M4 3v8m0-4H22m0-4v8',
        stroke: 'var(--ink)',
        'stroke-width': 1.4,
        fill: 'none',
      });
    case 'chart':
      return element('line', { x1: 1, x2: 25, y1: 7, y2: 7, ...chartLines[sign.of] });
  }
}

function lineOf(style: number, from: number, to: number, dash = dashOf(style)): SVGElement {
  return element('line', {
    x1: from,
    x2: to,
    y1: 7,
    y2: 7,
    stroke: colourOf(style),
    'stroke-width': weightOf(style),
    ...(dash ? { 'stroke-dasharray': dash } : {}),
  });
}
