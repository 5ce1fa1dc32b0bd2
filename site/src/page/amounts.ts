/** The amounts of a route as lines of words; what the core does not know is left out. */
import type { Amounts } from '../generated/contract';
import { detail } from '../text/detail';
import { localised } from '../text/say';
import { amount, duration, number, perUnit, shownIn, unitOf } from '../text/quantity';

export interface AmountShown {
  name: string;
  value: string;
  /** For one part; empty where that is not known. */
  part: string;
}

/** As the core's report prints money: three decimals, whatever the size. */
const money = (v: number): string => localised(v.toFixed(3));

export function amountsShown(a: Amounts): AmountShown[] {
  const t = detail.amounts;
  const part = a.per_part;
  const line = <T extends number | null>(
    name: string,
    v: T,
    print: (v: number) => string,
    ofPart: number | null | undefined = null,
    printPart = print,
  ): AmountShown[] =>
    v === null ? [] : [{ name, value: print(v), part: typeof ofPart === 'number' ? printPart(ofPart) : '' }];
  return [
    ...line(
      t.evaporated,
      a.evaporated_kg_per_m2,
      (v) => amount('coat_weight', v),
      part?.evaporated_kg,
      (v) => amount('small_mass', v),
    ),
    ...line(
      t.throughput,
      a.throughput_m2_per_h,
      (v) => number(shownIn('area', v), `${unitOf('area')}/h`),
      part?.parts_per_hour,
      (v) => `${number(v)} ${t.perHour}`,
    ),
    ...line(
      t.perShift,
      a.per_shift_m2,
      (v) => amount('area', v),
      part?.parts_per_shift,
      (v) => `${number(v)} ${t.parts}`,
    ),
    ...line(t.cycle, a.cycle_s, duration),
    ...line(
      t.energy,
      a.energy_J_per_m2,
      (v) => amount('energy', v),
      part?.energy_J,
      (v) => amount('work', v),
    ),
    ...line(
      t.cost,
      a.cost_per_m2,
      (v) => `${money(perUnit('area', v))} ${a.currency}/${unitOf('area')}`,
      part?.cost,
      (v) => `${money(v)} ${a.currency}`,
    ),
    ...line(
      t.carbon,
      a.carbon_kg_per_m2,
      (v) => amount('carbon', v),
      part?.carbon_kg,
      (v) => amount('mass', v),
    ),
  ];
}

/** Where the heat goes, per area; a term of nothing is no line. */
export const energyTerms = (a: Amounts): { name: string; value: string }[] =>
  a.energy_terms_J_per_m2
    .filter((term) => term.value !== 0)
    .map((term) => ({ name: term.name, value: amount('energy', term.value) }));
