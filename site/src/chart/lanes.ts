/** What the lane picture shows, drawn from the answer alone: states of the film, marks, heat, deadline, exit. */
import type { Mark, MarkName, Result, Route, Stage } from '../generated/contract';
import { pictures } from '../text/pictures';
import { duration } from '../text/quantity';
import { judged } from './judged';
import type { Reading } from './reading';
import type { KeyEntry } from './signs';
import { times, words, type Table } from './table';
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

/** Something that happens in a lane: a mark, an oven entered or left, the deadline, the end. */
export interface LaneEvent {
  lane: number;
  time: number;
  event: string;
  /** What the film is from then on. */
  state: string;
  /** The mark, where it is one. */
  mark: MarkName | null;
}

/** The events of a lane in the order of time. */
export function eventsOf(lane: Lane, place: number): LaneEvent[] {
  const t = pictures.lanes;
  const stateAt = (time: number): string => {
    const band = lane.bands.findLast((b) => b.from <= time);
    return band ? t.states[band.state] : '';
  };
  const events: [time: number, event: string, mark: MarkName | null][] = [
    ...lane.marks.map((m): [number, string, MarkName] => [
      m.time,
      m.note ? `${m.label} (${m.note})` : m.label,
      m.name,
    ]),
    ...lane.heat.map((h): [number, string, null] => [h.from, `${t.enters} ${h.name}`, null]),
    ...(lane.exit ? [[lane.exit.time, t.out, null] as [number, string, null]] : []),
    [lane.deadline.time, t.deadline, null],
    [lane.end, t.end, null],
  ];
  return events
    .toSorted((a, b) => a[0] - b[0])
    .map(([time, event, mark]) => ({ lane: place, time, event, state: stateAt(time), mark }));
}

export const allEvents = ({ lanes }: LanePicture): LaneEvent[] => lanes.flatMap(eventsOf);

export function readLane({ lanes }: LanePicture, { lane, time, event, state, mark }: LaneEvent): Reading {
  return {
    where: lanes[lane]?.title ?? '',
    values: [
      { name: event, value: duration(time), ...(mark ? { sign: { kind: 'mark', mark } } : {}) },
      { name: pictures.lanes.state, value: state },
    ],
  };
}

export function laneTable({ lanes }: LanePicture): Table {
  const t = pictures.lanes;
  return {
    columns: [words(t.route), words(t.event), times(t.time), words(t.state)],
    rows: lanes.flatMap((lane, i) => [
      ...eventsOf(lane, i).map((e) => [lane.title, e.event, e.time, e.state]),
      ...(lane.missing.length > 0
        ? [[lane.title, t.missing({ marks: lane.missing.join(', ') }), null, null]]
        : []),
    ]),
  };
}

/** What the textures and lines of the picture mean, as far as it has them. */
export function laneKey({ lanes }: LanePicture): KeyEntry[] {
  const t = pictures.lanes;
  const heat = lanes.flatMap((l) => l.heat);
  return [
    ...filmStates.map((state): KeyEntry => ({
      sign: { kind: 'texture', name: state, edge: 'var(--ink)' },
      words: t.states[state],
    })),
    ...(['heated', 'cooling'] as const)
      .filter((kind) => heat.some((h) => h.cooling === (kind === 'cooling')))
      .map((kind): KeyEntry => ({
        sign: { kind: 'texture', name: kind, edge: 'var(--heat)', low: true },
        words: t[kind],
      })),
    { sign: { kind: 'deadline' }, words: t.deadline },
  ];
}
