/** Texts out of files: the encodings that instruments write, and no file that would hold up the page. */
import { localised } from '../text/say';

/** The text of a file's bytes: UTF-16 by its mark, UTF-8, or else Latin-1 of Windows. */
export function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** A sentence of the core that begins with a place. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Millions of bytes with one decimal. */
export const megabytes = (bytes: number): string => localised((bytes / 1e6).toFixed(1));

/** The line that a fault is about, counted from one; null where it is about none. */
export function lineOf(path: string): number | null {
  const found = /^line (\d+)$/.exec(path);
  return found ? Number(found[1]) : null;
}

/** Where a line stands in a text. */
export function spanOfLine(text: string, line: number): [from: number, to: number] {
  const lines = text.split(/\r\n|\r|\n/);
  let from = 0;
  for (let i = 0; i < line - 1 && i < lines.length; i++) {
    from += (lines[i]?.length ?? 0) + 1;
  }
  return [from, from + (lines[line - 1]?.length ?? 0)];
}
