/** The accounts of the air as the page shows them: in the units of a workshop, small change left out. */
import type { Account, Balance, Term } from '../generated/contract';
import { detail } from '../text/detail';
import { amount, number, percent, relative, shownIn, temperature, unitOf } from '../text/quantity';

export interface SideShown {
  title: string;
  lines: { name: string; value: string }[];
  sum: string;
  open: string;
}

export interface AccountShown {
  place: string;
  humidity: string;
  dewPoint: string;
  heater: string;
  share: string;
  /** The heater would have to give more than there is. */
  short: boolean;
  flammable: string;
  /** Past the share up to which ovens run without watching the vapour. */
  dangerous: boolean;
  sides: SideShown[];
}

const absent = '–';
/** Of the largest term: less than this is what the computation leaves over, not an amount. */
const smallChange = 1e-9;
/** The share of the lower flammable limit that the note beside it calls the usual end. */
const flammableEnd = 0.25;

/** A core may leave out the terms of a side that nothing balances. */
type Lenient = Omit<Balance, 'terms'> & { terms: readonly Term[] | null };

export function accountsShown(accounts: readonly Account[]): AccountShown[] {
  const names = placesOf(accounts);
  return accounts.map((a, i) => {
    const steady = a.per === 'second';
    const { share_of_installed: share, installed_W: installed, share_of_flammable_limit: flammable } = a;
    const t = detail.air;
    return {
      place: names[i] ?? a.place,
      humidity: amount('air_humidity', a.humidity_ratio_kg_per_kg),
      dewPoint: temperature(a.dew_point_K),
      heater: a.duty_J > 0 ? amount(steady ? 'power' : 'work', a.duty_J) : absent,
      share:
        share === null || installed === null ? absent : `${percent(share)} / ${amount('power', installed)}`,
      short: share !== null && share > 1,
      flammable: flammable === null ? '' : percent(flammable),
      dangerous: flammable !== null && flammable > flammableEnd,
      sides: [
        sideOf(t.water({ unit: steady ? `${unitOf('mass')}/h` : unitOf('mass') }), a.water_kg, (v) =>
          shownIn('mass', steady ? v * 3600 : v),
        ),
        sideOf(t.heat({ unit: unitOf(steady ? 'power' : 'work') }), a.heat_J, (v) =>
          shownIn(steady ? 'power' : 'work', v),
        ),
      ],
    };
  });
}

/** One place may be there several times, before and after its heating is set back; then they are numbered. */
function placesOf(accounts: readonly Account[]): string[] {
  const seen = new Map<string, number>();
  return accounts.map(({ place }) => {
    const n = (seen.get(place) ?? 0) + 1;
    seen.set(place, n);
    return accounts.filter((a) => a.place === place).length > 1 ? detail.air.nth({ place, n }) : place;
  });
}

function sideOf(title: string, balance: Lenient, shown: (v: number) => number): SideShown {
  const terms = balance.terms ?? [];
  const largest = Math.max(0, ...terms.map((t) => Math.abs(t.value)));
  const held = (v: number): string => number(Math.abs(v) > smallChange * largest ? shown(v) : 0);
  const t = detail.air;
  return {
    title,
    lines: terms
      .filter((term) => Math.abs(term.value) > smallChange * largest)
      .map((term) => ({ name: term.name, value: held(term.value) })),
    sum:
      terms.length > 0
        ? t.sum({ inward: held(balance.in), outward: held(balance.out), kept: held(balance.kept) })
        : t.unbalanced,
    open: terms.length > 0 && balance.relative > 0 ? t.open({ relative: relative(balance.relative) }) : '',
  };
}
