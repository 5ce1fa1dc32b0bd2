/** Draws bars with their names over them and their errors as thin lines, on one axis of shares. */
import { percent } from '../text/quantity';
import type { Frame } from './beside';
import { textWidth } from './measure';
import type { Drawn } from './reading';
import type { Bar } from './spreads';
import { element } from './textures';

const font = 12;
const row = 40;
const bar = 12;
const margin = { left: 2, right: 14, top: 6, bottom: 26 };

export function drawBars(bars: readonly Bar[], width: number): Drawn {
  const height = margin.top + bars.length * row + margin.bottom;
  const frame: Frame = {
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: height - margin.bottom,
  };
  const x = (share: number): number => frame.left + share * (frame.right - frame.left);
  const svg = element('svg', {
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    'font-size': font,
    fill: 'currentColor',
  });
  svg.setAttribute('class', 'plot');
  const say = (words: string, at: number, y: number, more: Record<string, string | number> = {}): void => {
    const made = element('text', { x: at, y, fill: 'var(--ink)', ...more });
    made.textContent = words;
    svg.append(made);
  };
  for (const share of width < 420 ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1]) {
    const at = x(share);
    svg.append(element('line', { x1: at, x2: at, y1: frame.top, y2: frame.bottom, stroke: 'var(--line)' }));
    const anchor = share === 0 ? 'start' : share === 1 ? 'end' : 'middle';
    say(percent(share).replace(/[.,]0/, ''), share === 1 ? at + margin.right : at, frame.bottom + 17, {
      'text-anchor': anchor,
      fill: 'var(--muted)',
    });
  }
  const places = bars.map((b, i) => {
    const top = frame.top + i * row + 20;
    const value = percent(b.share);
    say(shortened(b.name, frame.right - frame.left - textWidth(value, font, 600) - 24), frame.left, top - 6);
    say(value, frame.right, top - 6, { 'text-anchor': 'end', 'font-weight': 600 });
    svg.append(
      element('rect', {
        x: frame.left,
        y: top,
        width: Math.max(1, x(b.share) - frame.left),
        height: bar,
        fill: 'var(--accent)',
      }),
      errorLine(x(Math.max(0, b.share - b.error)), x(Math.min(1, b.share + b.error)), top + bar / 2),
    );
    const y = top + bar / 2;
    return { x: x(b.share), y, dots: [{ x: x(b.share), y }] };
  });
  return { svg, frame, places };
}

/** A thin line with ends, on a pale ground so that it is seen on the bar as well. */
function errorLine(from: number, to: number, y: number): SVGElement {
  const d = `M${from} ${y - 4}v8m0-4H${to}m0-4v8`;
  const made = element('g', { fill: 'none' });
  made.append(
    element('path', { d, stroke: 'var(--surface)', 'stroke-width': 3.6 }),
    element('path', { d, stroke: 'var(--ink)', 'stroke-width': 1.4 }),
  );
  return made;
}

function shortened(words: string, width: number): string {
  if (textWidth(words, font) <= width) return words;
  let cut = words;
  while (cut.length > 4 && textWidth(`${cut}…`, font) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}
