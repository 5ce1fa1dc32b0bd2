/** What may be changed to take less: choices as they stand, and the question made of them. */
import type { Axis, Kind, Objective, Variable } from '../generated/contract';
import type { Wording } from '../state/plan.svelte';
import type { UnitReader } from '../state/units';
import { studyOf } from './questions';
import { axisOf, type AxisChoice } from './windows';

export interface Free extends AxisChoice {
  on: boolean;
}

/** What is free at first: the heat, zone by zone, and in a static oven the time. */
const first: Readonly<Record<Kind, (id: string) => boolean>> = {
  tunnel: (id) => id.startsWith('tunnel.zones['),
  static_oven: (id) => id === 'set_point' || id === 'dwell',
  room: () => false,
};

export const firstFree = (kind: Kind, variables: readonly Variable[]): Free[] =>
  variables
    .filter((v) => !v.given)
    .map(({ id }) => ({ variable: id, low: '', high: '', on: first[kind](id) }));

/** The bounds of what is free; null where one cannot be read. */
export function axesOf(
  free: readonly Free[],
  variables: readonly Variable[],
  units: UnitReader | null = null,
): Axis[] | null {
  const axes = free
    .filter((f) => f.on)
    .map((f) => {
      const variable = variables.find((v) => v.id === f.variable);
      return variable ? axisOf(f, variable, units) : null;
    });
  return axes.some((a) => a === null) ? null : (axes as Axis[]);
}

export const optimumWording =
  (free: readonly Axis[], objective: Objective, confidence: number): Wording =>
  ({ aims }) => ({
    op: 'optimise',
    optimise: { study: studyOf(aims), objective, free: [...free], tolerances: [], confidence, seed: 0 },
  });
