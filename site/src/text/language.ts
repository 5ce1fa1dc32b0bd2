/**
 * The words of the page in the language in use, part by part. A part is fetched with the chunk that needs it: whoever
 * imports a chunk asks for its words beside it (`spoken`). What `part` hands out is filled then, and filled anew when
 * another language is chosen, so that words are read where they are shown and never when a module starts.
 */
import made from 'virtual:words';
import type { Tag, Words } from '../generated/words';
import { count, type TimeUnit } from './say';

export type Part = keyof Words;

interface Language {
  name: string;
  mark: string;
  /** Whether a label of the core begins with a small letter inside a sentence. */
  lower: boolean;
  /** Signs of times that are not those of SI. */
  times?: Partial<Record<TimeUnit, string>>;
  parts: { readonly [P in Part]: () => Promise<{ default: Words[P] }> };
}

const languages = made as Readonly<Record<Tag, Language>>;
const shown = new Map<Part, object>();
const asked = new Set<Part>();
let current: Tag = 'en';

/** The languages that there are, with their own names. */
export const choices = Object.entries(languages).map(([tag, { name }]) => ({ tag: tag as Tag, name }));

/** The language in use. */
export const language = (): Tag => current;

/** The first of the wanted languages that there is, by its tag or by its first subtag; else English. */
export function bestOf(wanted: readonly string[]): Tag {
  for (const tag of wanted) {
    const found = choices.find((c) => c.tag === tag) ?? choices.find((c) => c.tag === tag.split('-')[0]);
    if (found) return found.tag;
  }
  return 'en';
}

/** The words of a part; empty until they have been fetched. */
export function part<P extends Part>(name: P): Words[P] {
  const words = shown.get(name) ?? {};
  shown.set(name, words);
  return words as Words[P];
}

/** Fetches parts in the language in use. */
export async function fetchWords(...names: Part[]): Promise<void> {
  for (const name of names) asked.add(name);
  const tag = current;
  const modules = await fetched(tag, names);
  if (tag === current) fill(modules); // else all that was asked for has been filled in another language meanwhile
}

/** A chunk of the page with the parts that it says. */
export async function spoken<T>(chunk: Promise<T>, ...names: Part[]): Promise<T> {
  const [loaded] = await Promise.all([chunk, fetchWords(...names)]);
  return loaded;
}

/** Fetches all that has been asked for in another language; what comes back puts the page into it. */
export async function prepare(tag: Tag): Promise<() => void> {
  const names = [...asked];
  const modules = await fetched(tag, names);
  return () => {
    current = tag;
    const { mark, times } = languages[tag];
    count(tag, mark, times);
    document.documentElement.lang = tag;
    fill(modules);
    // What has been asked for on the way follows.
    const late = [...asked].filter((name) => !names.includes(name));
    if (late.length > 0) void fetchWords(...late);
  };
}

type Fetched = readonly (readonly [Part, object])[];

const fetched = (tag: Tag, names: readonly Part[]): Promise<Fetched> =>
  Promise.all(
    names.map(async (name): Promise<[Part, object]> => [name, (await languages[tag].parts[name]()).default]),
  );

function fill(modules: Fetched): void {
  for (const [name, words] of modules) Object.assign(part(name), words);
}

/** A label of the core as it stands inside a sentence. */
export const inside = (label: string): string =>
  languages[current].lower ? `${label.charAt(0).toLowerCase()}${label.slice(1)}` : label;
