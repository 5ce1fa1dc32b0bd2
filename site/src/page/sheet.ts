/** What the printed sheet says, and what of it gives way when it does not fit on one page. */
import { judged, risksOf } from '../chart/judged';
import { recordKinds, recordOf, type RecordKind } from '../form/records';
import type { Catalogue, Job, Result, Route } from '../generated/contract';
import { getAt } from '../state/path';
import { detail } from '../text/detail';

/** The lists of the sheet that may be cut. What gives way first stands first. */
export const lists = ['assumptions', 'warnings', 'rests', 'settings', 'cautions'] as const;
export type ListName = (typeof lists)[number];

/** How many entries of each list are printed. */
export type Counts = Readonly<Record<ListName, number>>;

/** What of each list is never cut: the dangers and one line of the others, and the caution that always applies. */
export const least: Counts = { assumptions: 1, warnings: 3, rests: 2, settings: 3, cautions: 2 };

/**
 * One entry less, of the list that has most beyond what it keeps, counted by how early it gives way; null where nothing is
 * left to cut.
 */
export function cut(counts: Counts): Counts | null {
  const spare = lists.map((name, i) => ({ name, worth: (counts[name] - least[name]) / (i + 1) }));
  const [first] = spare.sort((a, b) => b.worth - a.worth);
  if (!first || first.worth <= 0) return null;
  return { ...counts, [first.name]: counts[first.name] - 1 };
}

/** Risks and warnings, the dangers first. */
export function warningsOf({ routes, warnings }: Result): string[] {
  const risks = routes.flatMap((r) =>
    risksOf(r).map((risk) => ({ danger: risk.severity === 'danger', words: `${r.title}: ${risk.text}` })),
  );
  const [dangers, notices] = [risks.filter((r) => r.danger), risks.filter((r) => !r.danger)];
  return [
    ...dangers.map((r) => r.words),
    ...warnings.map((w) => w.text),
    ...notices.map((r) => r.words),
    ...routes.flatMap((r) => r.warnings.map((w) => `${r.title}: ${w.text}`)),
  ];
}

const kinds: readonly RecordKind[] = ['adhesive', 'part', 'fibre'];

/** What the numbers take for granted. */
export function assumptionsOf(job: Job, { routes, rests }: Result, catalogue: Catalogue): string[] {
  const t = detail.sheet;
  const outside = routes.flatMap((r) => r.warnings).filter((w) => w.code.startsWith('transfer')).length;
  const generic = kinds.flatMap((kind) => {
    const record = recordOf(kind, getAt(job, `${recordKinds[kind].path}.record`), catalogue);
    return record ? [t.generic({ what: record.label })] : [];
  });
  return [
    rests.length > 0 ? t.tested : t.untested,
    t.flat,
    ...(outside > 0 ? [t.outside({ n: outside })] : []),
    ...generic,
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
