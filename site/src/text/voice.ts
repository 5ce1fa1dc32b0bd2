/** In which language and in which units the page and its core speak, and what was chosen at an earlier visit. */
import type { Tag } from '../generated/words';
import { bestOf, choices, fetchWords, prepare, type Part } from './language';

export type Units = 'si' | 'us';

export interface Voice {
  readonly language: Tag;
  readonly units: Units;
}

const keys = { language: 'drywright.language', units: 'drywright.units' } as const;

const stored = (key: string): string | null => {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
};

/**
 * What was chosen before; else the browser's language, and its units. Browsers are delivered speaking American English
 * everywhere, so that it takes an American clock as well to be asked for inches.
 */
export function firstVoice(
  wanted: readonly string[] = navigator.languages,
  zone: string = Intl.DateTimeFormat().resolvedOptions().timeZone,
): Voice {
  const [tag, units] = [stored(keys.language), stored(keys.units)];
  const american = wanted[0] === 'en-US' && /^(America|US)\//.test(zone);
  return {
    language: choices.find((c) => c.tag === tag)?.tag ?? bestOf(wanted),
    units: units === 'si' || units === 'us' ? units : american ? 'us' : 'si',
  };
}

let current: Voice = { language: 'en', units: 'si' };

export const voice = (): Voice => current;

/** Fetches the words of another voice; what comes back puts page and core into it from then on. */
export async function another(next: Voice): Promise<() => void> {
  const fill = await prepare(next.language);
  return () => {
    fill();
    current = next;
  };
}

/** Begins to speak, with the parts that are needed first. */
export async function speak(first: Voice, ...names: Part[]): Promise<void> {
  (await another(first))();
  await fetchWords(...names);
}

/** Keeps a choice for the next visit; a browser that keeps nothing speaks so until the page is closed. */
export function remember(next: Voice): void {
  try {
    localStorage.setItem(keys.language, next.language);
    localStorage.setItem(keys.units, next.units);
  } catch {
    // Nothing kept, nothing lost.
  }
}
