/** Two results side by side: for each route the answers, and the marks with what separates them. */
import type { Kind, Mark, Result, Route } from '../generated/contract';
import { jobs as words } from '../text/jobs';
import { duration } from '../text/quantity';

export interface MarkRow {
  name: string;
  label: string;
  left: string;
  right: string;
  /** How far right is from left, in words. */
  apart: string;
  differs: boolean;
}

export interface RoutePair {
  kind: Kind;
  title: string;
  left: Route | null;
  right: Route | null;
  marks: MarkRow[];
}

const kinds: readonly Kind[] = ['room', 'static_oven', 'tunnel'];

export function pairsOf(left: Result | null, right: Result | null): RoutePair[] {
  return kinds.flatMap((kind) => {
    const [a, b] = [left, right].map((r) => r?.routes.find((one) => one.kind === kind) ?? null);
    const title = a?.title ?? b?.title;
    return title === undefined
      ? []
      : [{ kind, title, left: a ?? null, right: b ?? null, marks: marksOf(a, b) }];
  });
}

function marksOf(left: Route | null | undefined, right: Route | null | undefined): MarkRow[] {
  const names = [...new Set([...(left?.marks ?? []), ...(right?.marks ?? [])].map((m) => m.name))];
  return names.map((name) => {
    const [a, b] = [left, right].map((r) => r?.marks.find((m) => m.name === name));
    const apart = a && b ? apartOf(a, b) : a ? words.compare.onlyLeft : words.compare.onlyRight;
    return {
      name,
      label: a?.label ?? b?.label ?? name,
      left: a?.text ?? words.compare.nothing,
      right: b?.text ?? words.compare.nothing,
      apart,
      differs: apart !== words.compare.same,
    };
  });
}

/** Times that print alike are called the same: the rest is beneath what the model tells. */
function apartOf(left: Mark, right: Mark): string {
  if (left.text === right.text) return words.compare.same;
  if (left.time_s === null || right.time_s === null)
    return left.time_s === null ? words.compare.onlyRight : words.compare.onlyLeft;
  const later = right.time_s - left.time_s;
  return later > 0
    ? words.compare.later({ time: duration(later) })
    : words.compare.earlier({ time: duration(-later) });
}

/** What a route has to spare, or lacks, in words. */
export function marginOf(route: Route): string {
  const { margin_s, margin_text: time } = route.answer;
  if (margin_s === null) return words.compare.noMargin;
  return margin_s < 0 ? words.compare.late({ time }) : words.compare.spare({ time });
}
