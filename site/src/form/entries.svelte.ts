/** Which entries of a list stand open. Many entries, and entries of many inputs, fold up; what is added stands open. */
import type { Complaint } from '../state/faults';
import { isWithin } from '../state/path';
import type { Node } from './layout';

const manyInputs = 5;
const manyEntries = 2;

export class EntryFolds {
  #chosen = $state<(boolean | undefined)[]>([]);
  /** How many there were at first, where that is several: they start closed. */
  readonly #several: number;

  constructor(count: number) {
    this.#several = count > 1 ? count : 0;
  }

  static needed(nodes: readonly Node[], count: number): boolean {
    return nodes.length > manyInputs || (nodes.length > 2 && count > manyEntries);
  }

  isOpen(i: number): boolean {
    return this.#chosen[i] ?? i >= this.#several;
  }

  toggle(i: number): void {
    this.#chosen[i] = !this.isOpen(i);
  }

  /** Opens the entry in which a path lies. */
  reveal(path: string, list: string, count: number): void {
    const i = Array.from({ length: count }).findIndex((_, n) => isWithin(path, `${list}[${n}]`));
    if (i >= 0) this.#chosen[i] = true;
  }

  removed(i: number, count: number): void {
    this.#chosen = this.#all(count).toSpliced(i, 1);
  }

  moved(from: number, to: number, count: number): void {
    this.#chosen = this.#all(count).toSpliced(from, 1).toSpliced(to, 0, this.isOpen(from));
  }

  #all(count: number): boolean[] {
    return Array.from({ length: count }, (_, n) => this.isOpen(n));
  }
}

export const wrongIn = (complaints: readonly Complaint[], entry: string): number =>
  complaints.filter((c) => isWithin(c.path, entry)).length;
