/** How much inputs vary: rows as typed, and the tolerances made of them. */
import type { Shape, Tolerance, Variable } from '../generated/contract';
import { fieldText } from '../state/number';
import { readShown, type UnitReader } from '../state/units';

export interface Varied {
  variable: Variable;
  shape: Shape;
  /** Whether the width counts in per cent of the present value. */
  relative: boolean;
  typed: string;
}

/** Degrees, metres or per cent: what stands behind the width. Differences have no offset, and of a temperature they are kelvins. */
export const unitOf = (v: Varied): string =>
  v.relative ? '%' : v.variable.display.symbol === '°C' ? 'K' : v.variable.display.symbol;

const scale = (v: Pick<Varied, 'relative' | 'variable'>): number =>
  v.relative ? 100 : v.variable.display.factor;

export const rowOf = (variable: Variable, t: Omit<Tolerance, 'variable'>): Varied => ({
  variable,
  shape: t.shape,
  relative: t.relative,
  typed: fieldText(Number((t.width * scale({ variable, relative: t.relative })).toPrecision(6))),
});

/** A row for something that is not usually varied: half of what counts as a step of it. */
export const newRow = (variable: Variable): Varied =>
  rowOf(variable, { shape: 'normal', relative: variable.log, width: variable.step / 2 });

/** null where the width is no number above zero. */
export function toleranceOf(v: Varied, units: UnitReader | null = null): Tolerance | null {
  const { dimension } = v.variable.display;
  const step = dimension === 'temperature' ? 'temperature_step' : dimension;
  const shown = { dimension: v.relative ? 'share' : step, symbol: unitOf(v), factor: scale(v), offset: 0 };
  const read = readShown(v.typed, shown, units);
  if (read.kind !== 'number' || !(read.si > 0)) return null;
  return { variable: v.variable.id, shape: v.shape, relative: v.relative, width: read.si };
}

export function tolerancesOf(rows: readonly Varied[], units: UnitReader | null = null): Tolerance[] | null {
  const all = rows.map((row) => toleranceOf(row, units));
  return all.length === 0 || all.some((t) => t === null) ? null : (all as Tolerance[]);
}
