/**
 * The one door to Observable Plot. It is loaded when the first picture is drawn, so that the page and its answers
 * stand before it.
 */
import type * as Marks from './marks';

export type Plot = typeof Marks;

let loading: Promise<Plot> | null = null;

export function loadPlot(): Promise<Plot> {
  loading ??= import('./marks').catch((error: unknown) => {
    loading = null; // a failed load may be tried again
    throw error;
  });
  return loading;
}

/**
 * Takes out of a drawing what the page does better: Plot's own style element (styles/plot.css says the same) and the
 * labels of its inner groups, since the picture as a whole has a name and a twin as a table.
 */
export function cleaned<T extends Element>(drawn: T): T {
  for (const style of drawn.querySelectorAll('style')) style.remove();
  for (const group of drawn.querySelectorAll('g[aria-label]')) group.removeAttribute('aria-label');
  return drawn;
}

/** Width of a text in pixels at a font size, measured where there is a canvas and estimated elsewhere. */
export function textWidth(words: string, size: number, weight = 400): number {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return words.length * size * 0.58;
  context.font = `${weight} ${size}px ${getComputedStyle(document.documentElement).fontFamily}`;
  return context.measureText(words).width;
}
let context: CanvasRenderingContext2D | null = null;
