/**
 * Numbers typed with any unit, by the rules of cure/unit and from its table, which the catalogue brings: "4 mil", "1 1/2 in",
 * "2 h 30 min". Arithmetic and spelling only; no unit stands here. Loaded behind the first answer, since a number in the
 * field's own unit needs none of it. testdata/units/readings.json holds both readers to the same answers.
 */
import type { Display, Scale, Unit } from '../generated/contract';
import { decimalMark } from '../text/say';
import { parseNumber } from './number';

/** Why a text is refused: no number, a unit that is not known, one of something else, or two readings. */
const refusals = ['type', 'choice', 'conflict', 'twice'] as const;
type Refusal = (typeof refusals)[number];
const isRefusal = (x: unknown): x is Refusal => refusals.some((r) => r === x);

/** A value in SI, or why there is none. plain: in the unit of the field, and no fraction. */
export type Reading = { kind: 'number'; si: number; plain: boolean } | { kind: 'empty' } | { kind: Refusal };

const longest = 80;

/** Signs that are typed in several ways, in one. */
const letters: readonly (readonly [RegExp, string])[] = [
  [/[\u2212\u2013\u2012]/g, '-'],
  [/[″”“]/g, '"'],
  [/[′’‘]/g, "'"],
  [/²/g, '2'],
  [/³/g, '3'],
  [/[\u00b5\u03bc]/g, 'u'],
  [/℃/g, '°c'],
  [/℉/g, '°f'],
  [/⁄/g, '/'],
  [/½/g, ' 1/2'],
  [/¼/g, ' 1/4'],
  [/¾/g, ' 3/4'],
  [/⅛/g, ' 1/8'],
  [/⅜/g, ' 3/8'],
  [/⅝/g, ' 5/8'],
  [/⅞/g, ' 7/8'],
  [/⅓/g, ' 1/3'],
  [/⅔/g, ' 2/3'],
  [/\s+/g, ' '],
];

const plainOf = (text: string): string =>
  letters
    .reduce((t, [from, to]) => t.replace(from, to), text)
    .trim()
    .toLowerCase()
    .replaceAll("''", '"');

/** A unit's name as it is compared. */
export const foldUnit = (name: string): string =>
  plainOf(name)
    .replaceAll(' per ', '/')
    .replace(/[ .,()[\]^*·⋅°º˚]/g, '')
    .replaceAll('₂', '2');

/** The named units of one dimension. */
type Names = ReadonlyMap<string, Unit>;

export class UnitReader {
  readonly #scales: ReadonlyMap<string, Scale>;
  readonly #names = new Map<string, Names>();

  constructor(scales: readonly Scale[]) {
    this.#scales = new Map(scales.map((s) => [s.dimension, s]));
  }

  /** The symbols that may be typed for what a display shows, the most usual first. */
  symbols(dimension: string): string[] {
    const units = this.#scales.get(dimension)?.units ?? [];
    return units.map((u) => u.symbol).filter((s) => s !== '' && s !== '1');
  }

  /** Reads a number that is shown in a display; decimal is the mark of decimals of the page's language. */
  read(text: string, { dimension, symbol }: Pick<Display, 'dimension' | 'symbol'>, decimal = '.'): Reading {
    let rest = plainOf(text);
    if (rest === '') return { kind: 'empty' };
    if (text.length > longest) return { kind: 'type' };
    let sum = 0;
    let sign = 1;
    let last = Infinity;
    let plain = false;
    for (let terms = 0; rest !== ''; terms++) {
      const number = numberOf(rest, decimal);
      if (isRefusal(number)) return { kind: number };
      if (number.negative && terms > 0) return { kind: 'type' };
      if (number.negative) sign = -1;
      const [name, after] = unitText(number.rest);
      rest = after;
      const several = terms > 0 || rest !== '';
      const unit = this.#meant(dimension, name, symbol, several);
      if (isRefusal(unit)) return { kind: unit };
      const size = unit.times / unit.over;
      if (several && (unit.zero !== 0 || size >= last)) return { kind: 'type' };
      last = size;
      plain = !several && name.trim() === '' && !number.fraction;
      // The zero of a temperature is shifted by a value with its sign; parts add up and take the sign together.
      sum += several
        ? (number.value * unit.times) / unit.over
        : (sign * ((sign * number.value + unit.zero) * unit.times)) / unit.over;
    }
    return Number.isFinite(sum) ? { kind: 'number', si: sign * sum, plain } : { kind: 'type' };
  }

  #meant(dimension: string, name: string, symbol: string, several: boolean): Unit | Refusal {
    const own = this.#scales.get(dimension);
    if (!own) return name.trim() === '' && !several ? nothing : 'choice';
    if (name.trim() === '' && !several) return own.units.find((u) => u.symbol === symbol) ?? 'choice';
    const folded = foldUnit(name);
    if (folded === '') return 'type';
    const unit = this.#namesOf(own).get(folded);
    if (unit) return unit;
    return [...this.#scales.values()].some((s) => this.#namesOf(s).has(folded)) ? 'conflict' : 'choice';
  }

  #namesOf(scale: Scale): Names {
    let names = this.#names.get(scale.dimension);
    if (!names) {
      names = new Map(
        scale.units.flatMap((u) => [foldUnit(u.symbol), ...u.names].map((n) => [n, u] as const)),
      );
      this.#names.set(scale.dimension, names);
    }
    return names;
  }
}

/**
 * A number that is shown in a display, in SI: with any unit where the table of units is at hand, else in the one that is shown.
 */
export function readShown(
  text: string,
  display: Pick<Display, 'dimension' | 'symbol' | 'factor' | 'offset'>,
  units: UnitReader | null,
): { kind: 'number'; si: number } | { kind: 'empty' } | { kind: 'other' } {
  const parsed = parseNumber(text, display.symbol);
  if (parsed.kind === 'number')
    return { kind: 'number', si: (parsed.value - display.offset) / display.factor };
  if (parsed.kind === 'empty') return parsed;
  const reading = units?.read(text, display, decimalMark());
  return reading?.kind === 'number' ? reading : { kind: 'other' };
}

const nothing: Unit = { symbol: '', times: 1, over: 1, zero: 0, names: [] };

interface Figures {
  value: number;
  negative: boolean;
  fraction: boolean;
  rest: string;
}

/** Reads one number at the start of a plain text. */
function numberOf(text: string, decimal: string): Figures | Refusal {
  const sign = /^[-+] ?/.exec(text)?.[0] ?? '';
  const negative = sign.startsWith('-');
  const t = text.slice(sign.length);
  const parts = /^(?:(\d{1,9})[ -])?(\d{1,9})\/(\d{1,9})(?!\d)/.exec(t);
  if (parts) {
    const value = Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
    return Number.isFinite(value)
      ? { value, negative, fraction: true, rest: t.slice(parts[0].length) }
      : 'type';
  }
  const run = /^(?:[\d.,]|(?<=\d)[ '](?=\d{3}(?!\d)))*/.exec(t)?.[0] ?? '';
  const digits = ungrouped(run, decimal);
  if (isRefusal(digits)) return digits;
  const exponent = /^e[-+]?\d+/.exec(t.slice(run.length))?.[0] ?? '';
  const value = Number(digits + exponent);
  if (!Number.isFinite(value)) return 'type';
  return { value, negative, fraction: false, rest: t.slice(run.length + exponent.length) };
}

/** Takes the marks between thousands out and makes the decimal mark a point; refuses what has two readings. */
function ungrouped(run: string, decimal: string): string | Refusal {
  if (!/\d/.test(run)) return 'type';
  const spaced = /[ ']/.test(run);
  const [points, commas] = [run.split('.').length - 1, run.split(',').length - 1];
  const mark = commas > 0 && run.lastIndexOf(',') > run.lastIndexOf('.') ? ',' : '.';
  let group = mark === ',' ? '.' : ',';
  const at = run.indexOf(mark);
  let [whole, decimals] = at < 0 ? [run, ''] : [run.slice(0, at), run.slice(at + 1)];
  if (points + commas === 1 && !spaced) {
    if (mark !== decimal && /^[^0]..?$|^[^0]$/.test(whole) && decimals.length === 3) return 'twice';
  } else if (run.split(mark).length > 2) {
    [whole, decimals, group] = [run, '', mark]; // one mark, several times, groups
  }
  if (spaced) {
    if (whole.includes(group) || /[.,' ]/.test(decimals)) return 'type';
    whole = whole.replaceAll("'", ' ');
    group = ' ';
  }
  const parts = whole.split(group);
  const grouped = parts.every((p, i) => (i === 0 ? p.length >= 1 && p.length <= 3 : p.length === 3));
  if ((parts.length > 1 && !grouped) || parts.some((p) => /[.,]/.test(p))) return 'type';
  return /[.,' ]/.test(decimals) ? 'type' : `${parts.join('')}.${decimals}`;
}

/** Cuts the unit off, up to the next number. A figure belongs to it where it raises a letter, and a one where it stands over something. */
function unitText(text: string): [name: string, rest: string] {
  const t = text.replace(/^ /, '');
  const over = /^1\/(?!\d)/.test(t) ? 2 : 0;
  const unit =
    /^(?:(?<=[a-z^])[23](?!\d)(?![.,]\d)|(?<=\/)100(?= ?[a-z])|[.,](?!\d)|[^\d.,])*/.exec(
      t.slice(over),
    )?.[0] ?? '';
  const cut = over + unit.length;
  return [t.slice(0, cut), t.slice(cut)];
}
