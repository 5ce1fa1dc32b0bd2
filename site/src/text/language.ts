/**
 * The words of the page in the language in use, part by part. A part is fetched with the chunk that needs it: whoever
 * imports a chunk asks for its words beside it (`fetchWords`). What `part` hands out is filled then, and filled anew when
 * another language is chosen, so that words are read where they are shown and never when a module starts.
 */
import made from 'virtual:words';
import type { Tag, Words } from '../generated/words';
import { count } from './say';

export type Part = keyof Words;

interface Language {
  name: string;
  mark: string;
  parts: { readonly [P in Part]: () => Promise<{ default: Words[P] }> };
}

const languages = made as Readonly<Record<Tag, Language>>;

const shown = new Map<Part, object>();
const fetched = new Set<Part>();
let current: Tag = 'en';

/** The words of a part; empty until they have been fetched. */
export function part<P extends Part>(name: P): Words[P] {
  const words = shown.get(name) ?? {};
  shown.set(name, words);
  return words as Words[P];
}

/** Fetches parts in the language in use. */
export async function fetchWords(...names: Part[]): Promise<void> {
  for (const name of names) fetched.add(name);
  await fill(current, names);
}

/** A chunk of the page with the parts that it says. */
export async function spoken<T>(chunk: Promise<T>, ...names: Part[]): Promise<T> {
  const [loaded] = await Promise.all([chunk, fetchWords(...names)]);
  return loaded;
}

async function fill(tag: Tag, names: readonly Part[]): Promise<void> {
  const { mark, parts } = languages[tag];
  const modules = await Promise.all(names.map((name) => parts[name]()));
  if (tag !== current) return; // another language was chosen on the way
  count(tag, mark);
  modules.forEach((module, i) => Object.assign(part(names[i] as Part), module.default));
}

/** The languages that there are, with their own names. */
export const choices = Object.entries(languages).map(([tag, { name }]) => ({ tag: tag as Tag, name }));

/** The language in use. */
export const language = (): Tag => current;

/** Puts all words fetched so far, and those to come, into a language. Where it cannot be fetched, the former one stays. */
export async function speak(tag: Tag): Promise<void> {
  const before = current;
  current = tag;
  try {
    await fill(tag, [...fetched]);
    document.documentElement.lang = tag;
  } catch (error) {
    if (current === tag) current = before;
    throw error;
  }
}

/** The first of the wanted languages that there is, by its tag or by its first subtag; else English. */
export function bestOf(wanted: readonly string[]): Tag {
  for (const tag of wanted) {
    const found = choices.find((c) => c.tag === tag) ?? choices.find((c) => c.tag === tag.split('-')[0]);
    if (found) return found.tag;
  }
  return 'en';
}

/** Where nouns are written with a capital anywhere in a sentence: German and Luxembourgish, no other language. */
const capitals: readonly string[] = ['de', 'lb'];

/** A label of the core as it stands inside a sentence. */
export const inside = (label: string): string =>
  capitals.includes(current) ? label : `${label.charAt(0).toLowerCase()}${label.slice(1)}`;
