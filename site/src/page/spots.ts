/** The places of a part beside each other: the open face and each spot, with the marks and the margin. */
import type { Mark, MarkName, Route } from '../generated/contract';
import { text } from '../text';
import { detail } from '../text/detail';
import { duration } from '../text/quantity';

export interface PlaceShown {
  name: string;
  ready: string;
  margin: string;
  late: boolean;
  worst: boolean;
  marks: string[];
}

const columns: readonly MarkName[] = ['touch', 'tack_free', 'dry_through', 'cured', 'cool'];

export const columnsOf = (route: Route): string[] =>
  columns.map((name) => route.marks.find((m) => m.name === name)?.label ?? detail.marks[name]);

export function placesOf(route: Route): PlaceShown[] {
  const deadline = route.answer.deadline_s;
  const place = (name: string, marks: readonly Mark[], worst: boolean): PlaceShown => {
    const ready = marks.find((m) => m.name === 'ready');
    const time = ready?.time_s ?? null;
    const margin = time === null ? null : deadline - time;
    return {
      name,
      ready: ready?.text ?? detail.spots.never,
      margin: margin === null ? '–' : marginWords(margin),
      late: margin === null || margin < 0,
      worst,
      marks: columns.map((c) => marks.find((m) => m.name === c)?.text ?? '–'),
    };
  };
  return [
    place(detail.spots.face, route.marks, !route.spots.some((s) => s.worst)),
    ...route.spots.map((s) => place(s.name, s.marks, s.worst)),
  ];
}

const marginWords = (margin: number): string =>
  margin < 0
    ? text.answers.late({ duration: duration(-margin) })
    : text.answers.spare({ duration: duration(margin) });
