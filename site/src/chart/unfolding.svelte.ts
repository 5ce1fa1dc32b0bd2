/** What unfolds below a button and folds again: by the button, by Escape, or when somebody goes elsewhere by key or pointer. */
export class Unfolding {
  open = $state(false);
  /** Holds the button and what unfolds. */
  place = $state<HTMLElement>();
  opener = $state<HTMLButtonElement>();

  readonly toggle = (): void => {
    this.open = !this.open;
  };

  /** Folds it, and leaves the focus where it was opened. */
  readonly shut = (): void => {
    this.open = false;
    this.opener?.focus();
  };

  readonly key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.open) return;
    event.preventDefault();
    this.shut();
  };

  readonly leave = (event: FocusEvent | PointerEvent): void => {
    const to = event instanceof FocusEvent ? event.relatedTarget : event.target;
    if (to instanceof Node && !this.place?.contains(to)) this.open = false;
  };
}
