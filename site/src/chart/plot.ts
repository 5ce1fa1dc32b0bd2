/**
 * The one door to Observable Plot. It is loaded when the first picture is drawn, so that the page and its answers
 * stand before it.
 */
export type Plot = typeof import('@observablehq/plot');

let loading: Promise<Plot> | null = null;

export function loadPlot(): Promise<Plot> {
  loading ??= import('@observablehq/plot').catch((error: unknown) => {
    loading = null; // a failed load may be tried again
    throw error;
  });
  return loading;
}

/** Takes Plot's own style element out before the picture enters the page; styles/plot.css says the same. */
export function withoutStyle<T extends Element>(drawn: T): T {
  for (const style of drawn.querySelectorAll('style')) style.remove();
  return drawn;
}

/** Width of a text in pixels at a font size, measured where there is a canvas and estimated elsewhere. */
export function textWidth(words: string, size: number): number {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return words.length * size * 0.58;
  context.font = `${size}px ${getComputedStyle(document.documentElement).fontFamily}`;
  return context.measureText(words).width;
}
let context: CanvasRenderingContext2D | null = null;
