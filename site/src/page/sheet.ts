/** What the printed sheet says, and what of it gives way when it does not fit on one page. */
import { judged, risksOf } from '../chart/judged';
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job, Result, Route } from '../generated/contract';
import { getAt } from '../state/path';
import { detail } from '../text/detail';

/** The lists of the sheet that may be cut, and the lines of its note. What gives way first stands first. */
export const lists = ['note', 'assumptions', 'warnings', 'rests', 'settings'] as const;
export type ListName = (typeof lists)[number];

/** How many entries of each list are printed. */
export type Counts = Readonly<Record<ListName, number>>;

/** What of each list stays, however little room there is: dangers are never cut (nor are cautions at all). */
export const leastOf = (dangers: number): Counts => ({
  note: 1,
  assumptions: 1,
  warnings: Math.max(1, dangers),
  rests: 1,
  settings: 3,
});

/** One entry less of the first list that has any to spare; null where none has. */
export function cut(counts: Counts, least: Counts): Counts | null {
  const name = lists.find((n) => counts[n] > least[n]);
  return name ? { ...counts, [name]: counts[name] - 1 } : null;
}

/** Puts entries back that turn out to have room, the most needed first: what stood in a shorter column was cut for nothing. */
export function refill(counts: Counts, all: Counts, fits: (counts: Counts) => boolean): Counts {
  let now = counts;
  for (const name of [...lists].reverse())
    while (now[name] < all[name]) {
      const more = { ...now, [name]: now[name] + 1 };
      if (!fits(more)) break;
      now = more;
    }
  return now;
}

/** Risks and warnings, the dangers first, and how many of those there are. */
export function warningsOf({ routes, warnings }: Result): { said: string[]; dangers: number } {
  const risks = routes.flatMap((r) =>
    risksOf(r).map((risk) => ({ danger: risk.severity === 'danger', words: `${r.title}: ${risk.text}` })),
  );
  const [dangers, notices] = [risks.filter((r) => r.danger), risks.filter((r) => !r.danger)];
  const said = [
    ...dangers.map((r) => r.words),
    ...warnings.map((w) => w.text),
    ...notices.map((r) => r.words),
    ...routes.flatMap((r) => r.warnings.map((w) => `${r.title}: ${w.text}`)),
  ];
  return { said, dangers: dangers.length };
}

/**
 * What the margins leave of the papers [mm], and a little less of the height, since browsers round lines differently. The one that
 * is not known before the sheet is laid out is left to the style sheet.
 */
export const papers = { letter: { width: 191, height: 260 }, a4: { width: 186, height: 278 } } as const;
export type Paper = keyof typeof papers;

/** How large the sheet may be set: 1 is 7.5 pt. Below the smallest, entries give way; what cannot is set as small as it must. */
export const sizes = { smallest: 0.84, largest: 1.2, least: 0.4 } as const;

/** The largest size that fits, to a hundredth. Lines break differently at each size, so that only tried ones count. */
export function fitted(fits: (size: number) => boolean): number {
  if (fits(sizes.largest)) return sizes.largest;
  let low: number = fits(sizes.smallest) ? sizes.smallest : sizes.least;
  let high: number = low === sizes.least ? sizes.smallest : sizes.largest;
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The width in pixels at which the lanes are drawn: their words go with the size of the sheet, in steps, since drawing takes time. */
export const pictureWidth = (size: number): number => (size < 0.92 ? 1000 : size > 1.1 ? 800 : 900);

const kinds: readonly RecordKind[] = ['adhesive', 'part', 'fibre'];

/** What the numbers take for granted. */
export function assumptionsOf(job: Job, { routes, rests }: Result, catalogue: Catalogue): string[] {
  const t = detail.sheet;
  const outside = routes.flatMap((r) => r.warnings).filter((w) => w.code.startsWith('transfer')).length;
  const generic = kinds.flatMap((kind) => {
    const record = recordOf(kind, getAt(job, `${recordKinds[kind].path}.record`), catalogue);
    return record ? [record.label] : [];
  });
  return [
    rests.length > 0 ? t.tested : t.untested,
    t.flat,
    ...(outside > 0 ? [t.outside({ n: outside })] : []),
    ...(generic.length > 0 ? [t.generic({ what: generic.join(', ') })] : []),
  ];
}

/** The margin of a route as it is judged, and the spot that decides. */
export const standing = (route: Route): { title: string; margin: string; spot: string } => ({
  title: judged(route).title,
  margin: marginOf(route),
  spot: route.answer.spot,
});

function marginOf({ answer }: Route): string {
  if (answer.margin_s === null) return '–';
  return `${answer.margin_s < 0 ? '−' : ''}${answer.margin_text}`;
}
