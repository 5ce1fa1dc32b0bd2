/** What is used up, as bars on one scale. */
import type { Limit } from '../generated/contract';
import { percent } from '../text/quantity';

export interface Bar {
  share: string;
  text: string;
  /** Length of the bar, as a share of the scale. */
  length: number;
  over: boolean;
  /** The bar is longer than the scale. */
  cut: boolean;
}

export interface Bars {
  /** Where 100 % stands, as a share of the scale. */
  end: number;
  bars: Bar[];
}

/** A share far beyond its end would press all others to nothing: the scale stops here and the bar is cut. */
const longest = 1.6;
const room = 1.1;

export function barsOf(limits: readonly Limit[]): Bars {
  const scale = Math.min(longest, Math.max(1, ...limits.map((l) => l.share)) * room);
  return {
    end: 1 / scale,
    bars: limits.map((l) => ({
      share: percent(l.share),
      text: l.text,
      length: Math.min(1, Math.max(0, l.share) / scale),
      over: l.share > 1,
      cut: l.share > scale,
    })),
  };
}
