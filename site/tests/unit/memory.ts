/** A store of the browser's kind, in memory, which can be made to fail as one does. */
import type { Store } from '../../src/state/shelf';

export class Memory implements Store {
  readonly items = new Map<string, string>();
  /** What setItem throws; null for a store that takes everything. */
  refuses: Error | null = null;

  get length(): number {
    return this.items.size;
  }
  key = (index: number): string | null => [...this.items.keys()][index] ?? null;
  getItem = (key: string): string | null => this.items.get(key) ?? null;
  setItem = (key: string, value: string): void => {
    if (this.refuses) throw this.refuses;
    this.items.set(key, value);
  };
  removeItem = (key: string): void => void this.items.delete(key);
}

export const full = new DOMException('no room', 'QuotaExceededError');
export const forbidden = new DOMException('not allowed', 'SecurityError');
