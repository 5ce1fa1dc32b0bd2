/** Width of a text in pixels at a font size, measured where there is a canvas and estimated elsewhere. */
export function textWidth(words: string, size: number, weight = 400): number {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return words.length * size * 0.58;
  context.font = `${weight} ${size}px ${getComputedStyle(document.documentElement).fontFamily}`;
  return context.measureText(words).width;
}
let context: CanvasRenderingContext2D | null = null;
