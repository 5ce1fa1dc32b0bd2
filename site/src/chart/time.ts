/** The axis of time, from seconds in the oven to days on the rack. */
import { timeUnit, type TimeUnit } from '../text/say';

export const minute = 60;
export const hour = 3600;
export const day = 86400;

const named: readonly [seconds: number, count: number, unit: TimeUnit][] = [
  [1, 1, 's'],
  [10, 10, 's'],
  [minute, 1, 'min'],
  [10 * minute, 10, 'min'],
  [hour, 1, 'h'],
  [8 * hour, 8, 'h'],
  [day, 1, 'd'],
  [7 * day, 7, 'd'],
  [30 * day, 30, 'd'],
];

/** The named ticks inside a span of times [s]. */
export const ticksWithin = (low: number, high: number): number[] =>
  named.map(([s]) => s).filter((s) => s >= low * 0.999 && s <= high * 1.001);

export function tickLabel(seconds: number): string {
  const found = named.find(([s]) => s === seconds);
  return found ? `${found[1]} ${timeUnit(found[2])}` : '';
}

/**
 * The span of a logarithmic axis that shows everything from just before the first event to the last one. Zero has no
 * place on it: spraying is the left edge.
 */
export function logSpan(events: readonly number[], end: number): [low: number, high: number] {
  const first = Math.min(...events.filter((t) => t > 0), end);
  const starts = [10, 30, minute, 2 * minute, 5 * minute, 10 * minute];
  const low = starts.filter((s) => s <= first / 1.6).at(-1) ?? 10;
  return [Math.min(low, first / 2), Math.max(end, low * 10) * 1.08];
}

/** The unit in which a linear axis up to `end` seconds is best read. */
export function linearUnit(end: number): { seconds: number; name: string } {
  if (end <= 3 * minute) return { seconds: 1, name: timeUnit('s') };
  if (end <= 3 * hour) return { seconds: minute, name: timeUnit('min') };
  if (end <= 3 * day) return { seconds: hour, name: timeUnit('h') };
  return { seconds: day, name: timeUnit('d') };
}
