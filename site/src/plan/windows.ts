/** Windows: the variables that are shown first, ranges as typed, and the picture in the units that are shown. */
import type { WindowAxis, WindowPicture, WindowSpot } from '../chart/window';
import type { Axis, Kind, Setting, Variable, Window } from '../generated/contract';
import { toShown, toSI } from '../state/display';
import type { Wording } from '../state/plan.svelte';
import { readShown, type UnitReader } from '../state/units';
import { studyOf } from './questions';

/** One axis as it is chosen: a variable, and the ends of its range as typed; both empty for the usual range. */
export interface AxisChoice {
  variable: string;
  low: string;
  high: string;
}

const first: Readonly<Record<Kind, readonly [string, string]>> = {
  tunnel: ['line_speed', 'zone_temperatures'],
  static_oven: ['dwell', 'set_point'],
  room: ['spray_later', 'coat'],
};

export const firstAxes = (kind: Kind): [AxisChoice, AxisChoice] => {
  const [x, y] = first[kind];
  return [
    { variable: x, low: '', high: '' },
    { variable: y, low: '', high: '' },
  ];
};

/** The range of a choice in SI; null where it cannot be read or is none. */
export function axisOf(choice: AxisChoice, variable: Variable, units: UnitReader | null = null): Axis | null {
  const { display } = variable;
  const [low, high] = [choice.low, choice.high].map((text) => readShown(text, display, units));
  if (low?.kind === 'empty' && high?.kind === 'empty') return { variable: variable.id, low: 0, high: 0 };
  if (low?.kind !== 'number' || high?.kind !== 'number') return null;
  const ends = [low.si, high.si] as const;
  if (!(ends[0] < ends[1]) || ends[0] < variable.low || ends[1] > variable.high) return null;
  return { variable: variable.id, low: ends[0], high: ends[1] };
}

/** A range that cannot be read is left to the core, which says what is wrong with it. */
export const windowWording =
  (x: AxisChoice, y: AxisChoice, units: UnitReader | null = null): Wording =>
  ({ variables, aims }) => {
    const axis = (choice: AxisChoice): Axis => {
      const found = variables.find((v) => v.id === choice.variable);
      return (found && axisOf(choice, found, units)) ?? { variable: choice.variable, low: 0, high: 0 };
    };
    return { op: 'window', window: { study: studyOf(aims), x: axis(x), y: axis(y), points: 0 } };
  };

/** The window as it is drawn. */
export function pictureOf(w: Window): WindowPicture {
  const axis = (v: Variable, low: number, high: number): WindowAxis => ({
    label: v.label,
    unit: v.display.symbol,
    low: toShown(low, v.display),
    high: toShown(high, v.display),
  });
  const spot = (x: number, y: number): WindowSpot => ({
    x: toShown(x, w.x.display),
    y: toShown(y, w.y.display),
  });
  return {
    x: axis(w.x, w.x_low, w.x_high),
    y: axis(w.y, w.y_low, w.y_high),
    limits: w.limits.map((l) => l.text),
    columns: w.columns,
    cells: w.cells,
    boundaries: w.boundaries.map((b) => b.x.map((x, i) => spot(x, b.y[i] ?? NaN))),
    present: spot(w.present.x, w.present.y),
    robust: w.robust && spot(w.robust.x, w.robust.y),
  };
}

/** The settings of a place in the picture, in SI. */
export const trialAt = (w: Window, spot: WindowSpot): Setting[] => [
  { variable: w.x.id, value: toSI(spot.x, w.x.display) },
  { variable: w.y.id, value: toSI(spot.y, w.y.display) },
];
