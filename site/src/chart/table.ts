/** The values of a picture as a table: what a screen reader is read, and what a file of values holds. One is made of the other. */
import { duration, number } from '../text/quantity';
import { decimalMark } from '../text/say';
import { withUnit } from './scale';

export type Cell = number | string | null;

export interface Column {
  name: string;
  /** Of the numbers; a time in seconds is shown as a workshop says it. */
  unit: string;
  /** Words, numbers in the unit, or a time [s]. */
  holds: 'words' | 'number' | 'time';
}

export interface Table {
  columns: readonly Column[];
  rows: readonly (readonly Cell[])[];
}

export const words = (name: string): Column => ({ name, unit: '', holds: 'words' });
export const numbers = (name: string, unit: string): Column => ({ name, unit, holds: 'number' });
export const times = (name: string): Column => ({ name, unit: 's', holds: 'time' });

/** The head of a column on the page. */
export const headOf = ({ name, unit, holds }: Column): string => withUnit(name, holds === 'time' ? '' : unit);

/** A cell as it is read on the page. */
export function cellText(cell: Cell | undefined, { holds }: Column): string {
  if (cell === null || cell === undefined || cell === '') return '–';
  if (typeof cell === 'string') return cell;
  return holds === 'time' ? duration(cell) : number(cell);
}

/** About `count` of the rows, evenly spread, first and last among them: enough to follow a curve by ear. */
export function brief<T>(rows: readonly T[], count = 12): T[] {
  if (rows.length <= count + 1) return [...rows];
  const last = rows.length - 1;
  const chosen = new Set(Array.from({ length: count + 1 }, (_, i) => Math.round((i * last) / count)));
  return rows.filter((_, i) => chosen.has(i));
}

const quoted = (cell: string, separator: string): string =>
  /["\n\r]/.test(cell) || cell.includes(separator) ? `"${cell.replaceAll('"', '""')}"` : cell;

/**
 * The whole table as a file for other programs (RFC 4180), in the units that the picture shows. Where the decimal mark is a comma, cells are
 * parted by semicolons, as spreadsheets of those languages expect.
 */
export function csvOf({ columns, rows }: Table, decimal = decimalMark()): string {
  const separator = decimal === ',' ? ';' : ',';
  const cell = (c: Cell): string => {
    if (c === null) return '';
    if (typeof c === 'string') return quoted(c, separator);
    return Number.isFinite(c) ? String(Number(c.toPrecision(10))).replace('.', decimal) : '';
  };
  const head = columns.map((c) => quoted(withUnit(c.name, c.unit), separator));
  return [head, ...rows.map((r) => r.map(cell))].map((r) => `${r.join(separator)}\r\n`).join('');
}
