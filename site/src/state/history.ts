/**
 * What can be undone in one job. A step holds the form as it stood before a change, and the path of what was changed.
 * Changes of one place that follow each other are one step until the place is left: no clock decides what belongs together.
 */
import type { Memo } from './slips';

export interface Step {
  /** The field, list or block that was changed; empty for the whole job. */
  path: string;
  memo: Memo;
}

/** Steps that are kept; a job of usual size takes some ten kilobytes. */
const most = 200;

export class History {
  readonly past: Step[] = [];
  readonly future: Step[] = [];
  /** The place whose changes still belong to the last step. */
  #open: string | null = null;

  /** Before a change: take gives the form as it stands. A path that may go on counts as one step until it is left. */
  mark(path: string, take: () => Memo, goesOn: boolean): void {
    if (goesOn && this.#open === path) return;
    this.past.push({ path, memo: take() });
    if (this.past.length > most) this.past.shift();
    this.future.length = 0;
    this.#open = goesOn ? path : null;
  }

  /** The place was left; what comes next is a step of its own. */
  seal(): void {
    this.#open = null;
  }

  undo(now: Memo): Step | null {
    return this.#turn(this.past, this.future, now);
  }

  redo(now: Memo): Step | null {
    return this.#turn(this.future, this.past, now);
  }

  /** The next step that makes a difference. What was typed and typed back again is passed over. */
  #turn(from: Step[], to: Step[], now: Memo): Step | null {
    this.seal();
    for (let step = from.pop(); step; step = from.pop()) {
      if (JSON.stringify(step.memo) === JSON.stringify(now)) continue;
      to.push({ path: step.path, memo: now });
      return step;
    }
    return null;
  }
}
