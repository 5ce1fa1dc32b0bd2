/** What a day costs on each route, as a picture wants it. A route that misses its goal is drawn, and says so. */
import type { Kind, PlanCosts } from '../generated/contract';
import { detail } from '../text/detail';
import { pictures } from '../text/pictures';
import { plan } from '../text/plan';
import { number } from '../text/quantity';
import type { Reading } from './reading';
import { shownIn, unitOf, withUnit } from './scale';
import type { KeyEntry, Sign } from './signs';
import { numbers, type Table } from './table';

export interface CostLine {
  name: string;
  style: number;
  /** False: no load of it satisfies the goal, so that it is no choice. */
  met: boolean;
  points: readonly { x: number; y: number }[];
  units: readonly number[];
}

export interface CostPicture {
  currency: string;
  lines: readonly CostLine[];
  /** The quantity that was asked about. */
  asked: number | null;
}

const styles: Readonly<Record<Kind, number>> = { room: 3, static_oven: 2, tunnel: 1 };

export const costPicture = (costs: PlanCosts): CostPicture => ({
  currency: costs.currency,
  lines: costs.routes.map((r) => ({
    name: r.met ? detail.routes[r.route] : pictures.cost.missed({ route: detail.routes[r.route] }),
    style: styles[r.route],
    met: r.met,
    points: r.cost_per_day.map((y, i) => ({ x: shownIn(costs.quantity_m2_per_day[i] ?? NaN, 'area'), y })),
    units: r.units,
  })),
  asked: costs.asked ? shownIn(costs.asked.quantity_m2_per_day, 'area') : null,
});

/** Where nothing has a price there is nothing to draw. */
export const priced = (costs: PlanCosts): boolean =>
  costs.routes.some((r) => r.cost_per_day.some((c) => c > 0));

const signOf = (l: CostLine): Sign => ({ kind: l.met ? 'line' : 'failing', style: l.style });

export const costKey = ({ lines }: CostPicture): KeyEntry[] =>
  lines.map((l) => ({ sign: signOf(l), words: l.name }));

export function readCost({ lines, currency }: CostPicture, point: number): Reading {
  return {
    where: `${number(lines[0]?.points[point]?.x ?? NaN)} ${plan.costs.unit({ unit: unitOf('area') })}`,
    values: lines.map((l) => ({
      name: l.name,
      value: `${number(l.points[point]?.y ?? NaN)}${currency ? ` ${currency}` : ''}`,
      sign: signOf(l),
    })),
  };
}

export const costTable = ({ lines, currency }: CostPicture): Table => ({
  columns: [
    numbers(plan.costs.faces, plan.costs.unit({ unit: unitOf('area') })),
    ...lines.flatMap((l) => [numbers(l.name, currency), numbers(pictures.cost.units({ route: l.name }), '')]),
  ],
  rows: (lines[0]?.points ?? []).map((p, i) => [
    p.x,
    ...lines.flatMap((l) => [l.points[i]?.y ?? null, l.units[i] ?? null]),
  ]),
});

export const costAxis = (currency: string): string => withUnit(plan.costs.y, currency);
export const quantityAxis = (): string =>
  withUnit(plan.costs.faces, plan.costs.unit({ unit: unitOf('area') }));
