/** Round numbers for an axis. */

/** About `count` steps of 1, 2 or 5 times a power of ten between two numbers, ends included where they are round. */
export function roundTicks(low: number, high: number, count: number): number[] {
  if (!(high > low) || count < 1) return [low];
  const step = roundStep((high - low) / count);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** The span widened to round ends, so that no history touches the frame. */
export function roundSpan(low: number, high: number, count: number): [number, number] {
  const step = roundStep((high > low ? high - low : 1) / count);
  const from = Math.floor(low / step);
  return [from * step, Math.max(from + 1, Math.ceil(high / step)) * step];
}

function roundStep(wanted: number): number {
  const power = 10 ** Math.floor(Math.log10(wanted));
  return ([1, 2, 5].find((f) => f * power >= wanted * 0.999) ?? 10) * power;
}
