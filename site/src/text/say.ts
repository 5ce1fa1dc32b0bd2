/**
 * What the language in use does to numbers: its decimal mark and its plurals. The messages of the language files are made
 * into JavaScript that calls `say` and `choose`; all other printing of numbers goes through `digits`.
 */
export type TimeUnit = 's' | 'min' | 'h' | 'd';

let mark = '.';
let rules = new Intl.PluralRules('en');
let times: Readonly<Partial<Record<TimeUnit, string>>> = {};

/** From now on numbers are printed as in that language. */
export function count(tag: string, decimalMark: string, timeUnits: typeof times = {}): void {
  mark = decimalMark;
  times = timeUnits;
  rules = new Intl.PluralRules(tag);
}

/** The decimal mark of the language in use. */
export const decimalMark = (): string => mark;

/** The sign of a unit of time. */
export const timeUnit = (name: TimeUnit): string => times[name] ?? name;

/** Digits as a program writes them, with the language's decimal mark. */
export const marked = (digits: string): string => digits.replace('.', mark);

/** The same to be read, with a typographic minus. */
export const localised = (digits: string): string => marked(digits).replace('-', '\u2212');

// Made once: to make one takes longer than a hundred numbers.
const full = new Intl.NumberFormat('en', { useGrouping: false, maximumFractionDigits: 20 });

/** A number in full: no grouping, no power of ten, no zeros at the end. */
export const digits = (value: number): string => localised(full.format(value));

/** An argument in its message. */
export const say = (value: string | number): string => (typeof value === 'number' ? digits(value) : value);

/** The branch for a number: the one that names it, else that of its plural category, else "other". */
export const choose = (n: number, branches: Readonly<Record<string, string>>): string =>
  branches[`=${n}`] ?? branches[rules.select(n)] ?? branches.other ?? '';
