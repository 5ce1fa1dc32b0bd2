import { focusField } from './ids';

/** Brings a field into view: sections watch the path and open themselves, then the field takes the focus. */
export class Reveal {
  path = $state<string | null>(null);

  show(path: string): void {
    this.path = null;
    this.path = path;
    void focusField(path);
  }
}
