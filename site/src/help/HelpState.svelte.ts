/** What of the help is open: one of its sheets, the note on one term, the tour. */
import type { Store } from '../state/shelf';
import type { TermKey } from './terms';

/** The part of the store that is needed here. */
type Shelf = Pick<Store, 'getItem' | 'setItem'>;

export type Sheet = 'glossary' | 'accuracy';

const key = 'drywright.tour';

export class HelpState {
  sheet = $state<Sheet | null>(null);
  /** The term that is explained, and where it was pressed. */
  note = $state.raw<{ key: TermKey; at: HTMLElement } | null>(null);
  touring = $state(false);
  /** Whether the tour is offered: at the first visit, and at every one where the browser keeps nothing. */
  offered = $state(false);
  #opener: HTMLElement | null = null;
  readonly #store: Shelf | null;

  constructor(store: Shelf | null) {
    this.#store = store;
    try {
      this.offered = store?.getItem(key) !== 'seen';
    } catch {
      this.offered = true;
    }
  }

  /** The tour starts, and gives the focus back to what had it. */
  tour(): void {
    this.#opener = document.activeElement instanceof HTMLElement ? document.activeElement : null;
    this.sheet = null;
    this.note = null;
    this.touring = true;
    this.decline();
  }

  endTour(): void {
    this.touring = false;
    const to = this.#opener?.isConnected ? this.#opener : document.getElementById('help-menu');
    to?.focus();
  }

  /** The offer is not made again. */
  decline(): void {
    this.offered = false;
    try {
      this.#store?.setItem(key, 'seen');
    } catch {
      // It is offered again at the next visit; nothing is forced.
    }
  }
}
