/** The amounts of a route as lines of words; what the core does not know is left out. */
import type { Amounts } from '../generated/contract';
import { text } from '../text';
import { areal, duration, number } from '../text/quantity';

export interface AmountShown {
  name: string;
  value: string;
}

const perKWh = 1 / 3.6e6;

export function amountsShown(a: Amounts): AmountShown[] {
  const t = text.plant.amounts;
  const given = (name: string, v: number | null, print: (v: number) => string): AmountShown[] =>
    v === null ? [] : [{ name, value: print(v) }];
  return [
    { name: t.evaporated, value: areal(a.evaporated_kg_per_m2) },
    ...given(t.throughput, a.throughput_m2_per_h, (v) => number(v, 'm²/h')),
    ...given(t.perShift, a.per_shift_m2, (v) => number(v, 'm²')),
    ...given(t.cycle, a.cycle_s, duration),
    ...given(t.energy, a.energy_J_per_m2, (v) => number(v * perKWh, 'kWh/m²')),
    // As the core's report prints money: three decimals, whatever the size.
    ...given(t.cost, a.cost_per_m2, (v) => `${v.toFixed(3)} ${a.currency}/m²`),
    ...given(t.carbon, a.carbon_kg_per_m2, (v) => number(v, 'kg/m²')),
  ];
}

/** Where the heat goes, in kWh/m²; a term of nothing is no line. */
export const energyTerms = (a: Amounts): AmountShown[] =>
  a.energy_terms_J_per_m2
    .filter((term) => term.value !== 0)
    .map((term) => ({ name: term.name, value: number(term.value * perKWh) }));
