/** The shares that several settings use up, criterion by criterion, as one table. */
import type { Criterion, PlanLimit, Standing } from '../generated/contract';
import { plan } from '../text/plan';

export interface MarginColumn {
  name: string;
  value: string;
  /** The present setting, the wanted one or the limit. */
  met: boolean;
}

export interface MarginRow {
  text: string;
  /** A share for each column; null where the criterion is far from mattering. */
  shares: (number | null)[];
}

export interface MarginTable {
  columns: MarginColumn[];
  rows: MarginRow[];
}

export function marginsOf(limit: PlanLimit): MarginTable {
  const t = plan.answer;
  const column = (name: string, at: Standing): [MarginColumn, readonly Criterion[]] => [
    { name, value: at.text, met: at.met },
    at.margins,
  ];
  const columns = [column(t.now, limit.present)];
  if (limit.wanted && !limit.wanted.refused) columns.push(column(t.wanted, limit.wanted));
  if (limit.value !== null)
    columns.push([{ name: t.limit, value: limit.value_text, met: true }, limit.margins]);
  const rows = new Map<string, MarginRow>();
  columns.forEach(([, margins], place) => {
    for (const c of margins) {
      const text = c.text ?? c.name;
      const row = rows.get(text) ?? { text, shares: columns.map(() => null) };
      row.shares[place] = c.share;
      rows.set(text, row);
    }
  });
  const worst = (row: MarginRow): number => Math.max(...row.shares.map((s) => s ?? 0));
  return {
    columns: columns.map(([c]) => c),
    rows: [...rows.values()].sort((a, b) => worst(b) - worst(a)),
  };
}
