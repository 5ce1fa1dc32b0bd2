/** What matters in a spread, as bars: the share of each input, the largest first, with its error. */
import type { Spread } from '../generated/contract';
import { pictures } from '../text/pictures';
import { percent } from '../text/quantity';
import type { Reading } from './reading';
import { shownIn, unitOf } from './scale';
import { numbers, words, type Table } from './table';

export interface Bar {
  name: string;
  /** Of the spread, 0 to 1. */
  share: number;
  error: number;
  /** In the words of the core. */
  text: string;
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

export const barsOf = (spread: Spread): Bar[] =>
  spread.influences.map(({ variable, share, text }) => ({
    name: variable.label,
    share: within(share.total),
    error: share.total_error,
    text,
  }));

export function readBar(bars: readonly Bar[], stop: number): Reading {
  const bar = bars[stop];
  if (!bar) return { where: '', values: [] };
  return {
    where: bar.name,
    values: [
      { name: pictures.spread.share, value: percent(bar.share) },
      { name: pictures.spread.error, value: percent(bar.error) },
    ],
  };
}

export function barTable(bars: readonly Bar[]): Table {
  const t = pictures.spread;
  const unit = unitOf('share');
  return {
    columns: [words(t.input), numbers(t.share, unit), numbers(t.error, unit)],
    rows: bars.map((b) => [b.name, shownIn(b.share, 'share'), shownIn(b.error, 'share')]),
  };
}
