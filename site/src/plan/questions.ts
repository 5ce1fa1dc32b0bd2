/** The questions that are one click away, in plain speech, and what they ask of the core. */
import type { Aims, Kind, Study, Tolerance, Variable } from '../generated/contract';
import type { Wording } from '../state/plan.svelte';
import { plan } from '../text/plan';

export interface Question {
  name: string;
  /** What is pushed. */
  variable: string;
  /** Its words; those of a wanted change take the per cent as typed. */
  words: (percent: string) => string;
  /** More is wanted of it, in per cent. */
  wants?: boolean;
  /** Not every job of the route has the variable. */
  sometimes?: boolean;
}

const questions: Readonly<Record<Kind, readonly Question[]>> = {
  tunnel: [
    {
      name: 'more',
      variable: 'line_speed',
      words: (percent) => plan.questions.more({ percent }),
      wants: true,
    },
    { name: 'fast', variable: 'line_speed', words: () => plan.questions.fast },
    { name: 'cool', variable: 'zone_temperatures', words: () => plan.questions.cool },
  ],
  room: [
    { name: 'late', variable: 'spray_later', words: () => plan.questions.late },
    { name: 'load', variable: 'rack_load', words: () => plan.questions.load, sometimes: true },
  ],
  static_oven: [
    { name: 'short', variable: 'dwell', words: () => plan.questions.short },
    { name: 'cool', variable: 'set_point', words: () => plan.questions.setPoint },
    { name: 'full', variable: 'charge', words: () => plan.questions.full, sometimes: true },
  ],
};

/** The questions of a route. What only some jobs have is left out until it is known that this one has it. */
export const questionsOf = (kind: Kind, variables: readonly Variable[] | null): readonly Question[] =>
  questions[kind].filter((q) =>
    variables ? variables.some((v) => v.id === q.variable) : q.sometimes !== true,
  );

/** One limit, with what would help; more is the wanted change as a share. */
export const limitWording =
  (variable: string, more: number | null): Wording =>
  ({ variables, aims }) => {
    const found = variables.find((v) => v.id === variable);
    const wanted = more === null || !found ? null : found.present * (1 + more);
    const toward = found?.toward ?? 'highest';
    return {
      op: 'limits',
      limits: { study: studyOf(aims), limits: [{ variable, toward, wanted, levers: true }] },
    };
  };

/** What spoils a night, besides the hour of spraying. */
const ofTheNight: readonly string[] = ['room_temperature', 'room_humidity', 'coat'];

/** Is overnight enough: how late may be sprayed, what would help, and how far the night and the coat may go. */
export const overnightWording: Wording = ({ variables, aims }) => {
  const limits = variables
    .filter((v) => v.id === 'spray_later' || ofTheNight.includes(v.id))
    .map(({ id, toward }) => ({ variable: id, toward, wanted: null, levers: id === 'spray_later' }));
  return { op: 'limits', limits: { study: studyOf(aims), limits } };
};

/** Every limit of the route, in one sweep. */
export const allWording: Wording = ({ variables, aims }) => ({
  op: 'limits',
  limits: {
    study: studyOf(aims),
    limits: variables.map(({ id, toward }) => ({ variable: id, toward, wanted: null, levers: false })),
  },
});

/** How sure the setting is, with the tolerances that are usual. */
export const spreadWording =
  (tolerances: readonly Tolerance[]): Wording =>
  ({ aims }) => ({
    op: 'spread',
    spread: { study: studyOf(aims), tolerances: [...tolerances], rows: 0, replicates: 0, seed: 0 },
  });

/** What a day costs on every route; quantity is asked about besides. */
/** Points of the cost curves: enough that a step for a further unit looks like one. */
const costPoints = 601;

export const costWording =
  (quantity: number | null): Wording =>
  () => ({
    op: 'costs',
    costs: { quantity_m2_per_day: quantity, highest_m2_per_day: 0, points: costPoints },
  });

/** The goal is stated, so that the core need not find it out again. */
export const studyOf = ({ route, goal }: Aims): Study => ({ route, goal });
