/** What the lane picture shows, drawn from the answer alone: states of the film, marks, heat, deadline, exit. */
import type { Mark, MarkName, Result, Route, Stage } from '../generated/contract';
import { judged } from './judged';
import { logSpan } from './time';

export type FilmState = 'wet' | 'touch' | 'dry' | 'cured';
export const filmStates: readonly FilmState[] = ['wet', 'touch', 'dry', 'cured'];

export interface Band {
  state: FilmState;
  from: number;
  to: number;
}

export interface LaneMark {
  name: MarkName;
  label: string;
  time: number;
  text: string;
  where: string;
  /** What the core remarks on it. */
  note: string;
}

export interface Heat {
  from: number;
  to: number;
  name: string;
  cooling: boolean;
}

export interface Lane {
  kind: Route['kind'];
  title: string;
  bands: Band[];
  marks: LaneMark[];
  missing: string[];
  heat: Heat[];
  deadline: { time: number; text: string };
  exit: { time: number; text: string } | null;
  end: number;
}

export interface LanePicture {
  lanes: Lane[];
  low: number;
  high: number;
}

const stateAfter: Partial<Record<MarkName, FilmState>> = {
  touch: 'touch',
  dry_through: 'dry',
  cured: 'cured',
};

export function lanePicture(result: Result): LanePicture {
  const lanes = result.routes.map(judged).map(laneOf);
  const events = lanes.flatMap((l) => [...l.marks.map((m) => m.time), ...l.heat.map((h) => h.from)]);
  const [low, high] = logSpan(
    events,
    Math.max(...lanes.map((l) => l.end), ...lanes.map((l) => l.deadline.time), 60),
  );
  return { lanes, low, high };
}

function laneOf(route: Route): Lane {
  const end = route.stages.at(-1)?.end_s ?? route.curves.time_s.at(-1) ?? route.answer.deadline_s;
  // What holds from the start (cool, in a room) is no event and has no place on a logarithmic axis.
  const reached = route.marks.filter(
    (m): m is Mark & { time_s: number } => m.time_s !== null && m.time_s > 0,
  );
  return {
    kind: route.kind,
    title: route.title,
    bands: bandsOf(route.marks, end),
    marks: reached
      .map((m) => ({
        name: m.name,
        label: m.label,
        time: m.time_s,
        text: m.text,
        where: m.where,
        note: m.note,
      }))
      .sort((a, b) => a.time - b.time),
    missing: route.marks.filter((m) => m.time_s === null).map((m) => m.label),
    heat: route.stages.filter(isOven).map(heatOf),
    deadline: { time: route.answer.deadline_s, text: route.answer.deadline_text },
    exit: route.exit ? { time: route.exit.time_s, text: route.exit.text } : null,
    end,
  };
}

const isOven = (s: Stage): boolean => s.kind === 'oven' || s.kind === 'heated' || s.kind === 'cooling';
const heatOf = (s: Stage): Heat => ({
  from: s.start_s,
  to: s.end_s,
  name: s.name,
  cooling: s.kind === 'cooling',
});

/** The film's state between the marks: it only ever moves on, so the furthest state reached counts. */
export function bandsOf(marks: readonly Mark[], end: number): Band[] {
  const steps = marks
    .flatMap((m) => {
      const state = stateAfter[m.name];
      return state && m.time_s !== null ? [{ state, time: m.time_s }] : [];
    })
    .sort((a, b) => a.time - b.time);
  const bands: Band[] = [{ state: 'wet', from: 0, to: end }];
  for (const step of steps) {
    const last = bands.at(-1);
    if (!last || filmStates.indexOf(step.state) <= filmStates.indexOf(last.state)) continue;
    last.to = step.time;
    if (last.to <= last.from) bands.pop();
    bands.push({ state: step.state, from: step.time, to: end });
  }
  return bands;
}
