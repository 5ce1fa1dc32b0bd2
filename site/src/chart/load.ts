/**
 * The one door to the drawings and to Observable Plot behind them. They are loaded when the first picture is wanted, so
 * that the page and its answers stand before it.
 */
import type * as AllDrawings from './drawings';

export type Drawings = typeof AllDrawings;

let loading: Promise<Drawings> | null = null;
let loaded: Drawings | null = null;

/** The drawings, where they have come: paper cannot wait for them. */
export const drawingsNow = (): Drawings | null => loaded;

export function loadDrawings(): Promise<Drawings> {
  loading ??= import('./drawings').then(
    (drawings) => (loaded = drawings),
    (error: unknown) => {
      loading = null; // a failed load may be tried again
      throw error;
    },
  );
  return loading;
}
