/** The compiler of messages against the vectors that the core's reader is held to, and the language files against each other. */
import { describe, expect, test } from 'vitest';
import vectorsText from '../../../testdata/words/messages.json?raw';
import { choose, count, say } from '../../src/text/say';
import { languages } from '../../vite/words/files.mjs';
import { argumentsOf, compile, parse } from '../../vite/words/message.mjs';
import { moduleOf, typesOf, type Messages } from '../../vite/words/module.mjs';

interface Case {
  language: string;
  message: string;
  arguments: Record<string, string | number>;
  want: string;
}
const vectors = JSON.parse(vectorsText) as {
  languages: Record<string, { decimal_mark: string }>;
  cases: Case[];
  malformed: ({ message: string } | string)[];
};

/** Carries out what the compiler has made. */
function spoken({ language, message, arguments: given }: Case): string {
  count(language, vectors.languages[language]?.decimal_mark ?? '.');
  const made: unknown = new Function('say', 'choose', `return ${compile(message)}`)(say, choose);
  return typeof made === 'function' ? String(made(given)) : String(made);
}

describe('messages', () => {
  // Types keep an argument from being left out, so that there is nothing to show in its place.
  const sayable = vectors.cases.filter((c) =>
    [...argumentsOf(parse(c.message)).keys()].every((k) => k in c.arguments),
  );

  test('there are vectors', () => expect(sayable.length).toBeGreaterThan(20));
  test.each(sayable)('$language: $message', (c) => {
    try {
      expect(spoken(c)).toBe(c.want);
    } finally {
      count('en', '.');
    }
  });

  test('malformed ones are refused', () => {
    expect(vectors.malformed.length).toBeGreaterThan(5);
    for (const m of vectors.malformed)
      expect(() => parse(typeof m === 'string' ? m : m.message), JSON.stringify(m)).toThrow(SyntaxError);
  });

  test('what JavaScript would read is text', () => {
    const odd = 'a `tick` ${x} \\n "quoted" {x}';
    expect(() => parse(odd)).not.toThrow();
    expect(spoken({ language: 'en', message: odd, arguments: { x: 'X' }, want: '' })).toBe(
      'a `tick` $X \\n "quoted" X',
    );
  });
});

describe('modules and types', () => {
  const messages: Messages = { plain: 'Yes.', deep: { 'odd-key': '{a}: {n, plural, one {#} other {#}}' } };

  test('say what is needed of the runtime, and no more', () => {
    expect(moduleOf({ plain: 'Yes.' }, './say')).toBe('export default {"plain":"Yes."};\n');
    expect(moduleOf(messages, './say')).toMatch(/^import \{say,choose\} from ".\/say";/);
  });

  test('an argument that is counted by is a number', () => {
    const types = typesOf({ main: messages }, ['en']);
    expect(types).toContain('plain: string;');
    expect(types).toContain('"odd-key": (a: { a: string | number; n: number }) => string;');
  });
});

/** Every message under its path. */
function* flat(messages: Messages, path = ''): Generator<[string, string]> {
  if (typeof messages === 'string') yield [path, messages];
  else for (const [key, inner] of Object.entries(messages)) yield* flat(inner, path ? `${path}.${key}` : key);
}

describe('the language files', () => {
  const [english, ...others] = languages();
  const wanted = new Map(flat(english?.page ?? {}));

  test('English is complete', () => {
    expect(wanted.size).toBeGreaterThan(400);
    for (const [path, message] of wanted) expect(message, path).not.toBe('');
  });

  test.each(others)('$name has the same messages with the same arguments', ({ page }) => {
    const said = new Map(flat(page));
    expect(
      [...said.keys()].filter((path) => !wanted.has(path)),
      'not in English',
    ).toEqual([]);
    expect(
      [...wanted.keys()].filter((path) => !said.has(path)),
      'missing',
    ).toEqual([]);
    for (const [path, message] of wanted)
      expect([...argumentsOf(parse(said.get(path) ?? ''))].sort(), path).toEqual(
        [...argumentsOf(parse(message))].sort(),
      );
  });

  const sources = Object.values(
    import.meta.glob<string>('../../src/**/*.{svelte,ts}', { query: '?raw', import: 'default', eager: true }),
  ).join('\n');

  // A message is read by its key, or as one of an object that is looked into by a name of the core: a mark, a route.
  test('every message is used', () => {
    const used = (path: string): boolean => {
      const [key = '', parent = ''] = path.split('.').reverse();
      return new RegExp(`\\.${key}\\b`).test(sources) || new RegExp(`\\.${parent}\\b(?!\\.)`).test(sources);
    };
    expect([...wanted.keys()].filter((path) => !used(path))).toEqual([]);
  });
});
