/** Which words of a sentence the glossary explains. */
import { glossary } from '../text/glossary';
import { language } from '../text/language';

export type TermKey = keyof typeof glossary;

/** A piece of a sentence; key is the entry that explains it. */
export interface Piece {
  words: string;
  key: TermKey | null;
}

interface Finder {
  pattern: RegExp;
  keys: ReadonlyMap<string, TermKey>;
}

const finders = new Map<string, Finder>();

const escaped = (words: string): string => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The search of a language, made once: the longer form goes first, so that "dew point" is no "dew". */
function finder(): Finder {
  const known = finders.get(language());
  if (known) return known;
  const keys = new Map<string, TermKey>();
  for (const [key, { forms }] of entries())
    for (const form of forms.split(';')) keys.set(form.toLowerCase(), key);
  const forms = [...keys.keys()].sort((a, b) => b.length - a.length).map(escaped);
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${forms.join('|')})(?![\\p{L}\\p{N}])`, 'giu');
  const made = { pattern, keys };
  finders.set(language(), made);
  return made;
}

export const entries = (): [TermKey, (typeof glossary)[TermKey]][] =>
  Object.entries(glossary) as [TermKey, (typeof glossary)[TermKey]][];

/**
 * A sentence cut at its terms. Each term is marked once, and not where sentences before it have it: a page of dotted lines would
 * help nobody, and each is a stop for the keyboard.
 */
export function piecesOf(sentence: string, before = ''): Piece[] {
  const { pattern, keys } = finder();
  const pieces: Piece[] = [];
  const seen = new Set([...before.matchAll(pattern)].map(([found]) => keys.get(found.toLowerCase())));
  let from = 0;
  for (const { 0: found, index } of sentence.matchAll(pattern)) {
    const key = keys.get(found.toLowerCase());
    if (!key || seen.has(key)) continue;
    seen.add(key);
    if (index > from) pieces.push({ words: sentence.slice(from, index), key: null });
    pieces.push({ words: found, key });
    from = index + found.length;
  }
  if (from < sentence.length) pieces.push({ words: sentence.slice(from), key: null });
  return pieces;
}

/** The entries that hold every word searched for, by their names. */
export function search(typed: string): [TermKey, (typeof glossary)[TermKey]][] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return entries()
    .filter(([, { term, forms, text }]) => {
      const held = `${term} ${forms} ${text}`.toLowerCase();
      return wanted.every((w) => held.includes(w));
    })
    .sort(([, a], [, b]) => a.term.localeCompare(b.term, language()));
}
