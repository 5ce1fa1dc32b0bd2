/**
 * The one door to the drawings and to Observable Plot behind them. They are loaded when the first picture is wanted, so
 * that the page and its answers stand before it.
 */
import type * as AllDrawings from './drawings';

export type Drawings = typeof AllDrawings;

let loading: Promise<Drawings> | null = null;

export function loadDrawings(): Promise<Drawings> {
  loading ??= import('./drawings').catch((error: unknown) => {
    loading = null; // a failed load may be tried again
    throw error;
  });
  return loading;
}
