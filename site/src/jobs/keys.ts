/**
 * Undo and redo by keys. In a field the browser's own undo comes first: as long as its text is not what it was when the field was
 * entered, Ctrl+Z belongs to the field. After that, and everywhere else, it belongs to the job.
 */
export type Command = 'undo' | 'redo';

export interface Pressed {
  key: string;
  ctrlKey: boolean;
  metaKey: boolean;
  shiftKey: boolean;
  altKey: boolean;
}

/** What a key asks for: Ctrl+Z, Ctrl+Shift+Z, Ctrl+Y, or the same with the command key. */
export function commandOf({ key, ctrlKey, metaKey, shiftKey, altKey }: Pressed): Command | null {
  if ((!ctrlKey && !metaKey) || altKey) return null;
  const letter = key.toLowerCase();
  if (letter === 'z') return shiftKey ? 'redo' : 'undo';
  return letter === 'y' && !shiftKey ? 'redo' : null;
}

const textual = /^(?:text|search|url|tel|email|password|number|)$/;

/** The text in a control that is typed into; null for anything else. */
export function typedText(target: EventTarget | null): string | null {
  if (target instanceof HTMLTextAreaElement) return target.value;
  return target instanceof HTMLInputElement && textual.test(target.type) ? target.value : null;
}
