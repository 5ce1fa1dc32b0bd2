/** The moist-air chart in units of display: the chart's own lines, and the way of air and film through it. */
import type { ChartLine, MoistAir, MarkName, Route } from '../generated/contract';
import { pictures } from '../text/pictures';
import { duration, percent } from '../text/quantity';
import { stageKey, type Point } from './curves';
import { glyphs } from './glyphs';
import type { Reading } from './reading';
import { amount, shownIn, unitOf, withUnit } from './scale';
import type { KeyEntry } from './signs';
import { numbers, times, words, type Table } from './table';

export interface NamedLine {
  name: string;
  points: Point[];
}

/** The air of one or more stages, where it stands on the chart, with its dew point on the saturation line. */
export interface StageAir extends Point {
  /** Numbers of the stages that have it. */
  numbers: number[];
  dew: Point | null;
}

export interface MoistPicture {
  xLabel: string;
  yLabel: string;
  /** The frame. */
  low: number;
  high: number;
  most: number;
  saturation: Point[];
  humidities: NamedLine[];
  wetBulbs: NamedLine[];
  stages: { number: number; name: string }[];
  airs: StageAir[];
  /** Of the air and of the film's surface, one for each time; the film's may lie above the frame. */
  air: Point[];
  film: Point[];
  marks: (Point & { name: MarkName; label: string })[];
}

const place = (kelvin: number, ratio: number | null): Point => ({
  x: shownIn(kelvin, 'temperature'),
  y: ratio === null ? Infinity : shownIn(ratio, 'humidity'),
});

const lineOf = (l: ChartLine): Point[] =>
  l.temperature_K.map((t, i) => place(t, l.humidity_ratio_kg_per_kg[i] ?? NaN));

/** A share or temperature of a chart's line, which is a round number in SI. */
const round = (words: string): string => words.replace(/[.,]0(?=\D|$)/, '');

export function moistPicture(chart: MoistAir, route: Route): MoistPicture {
  const t = pictures.moist;
  const { course } = chart;
  const air = course.time_s.map((_, i) =>
    place(course.air_temperature_K[i] ?? NaN, course.air_humidity_ratio_kg_per_kg[i] ?? NaN),
  );
  const film = course.time_s.map((_, i) =>
    place(course.film_temperature_K[i] ?? NaN, course.surface_humidity_ratio_kg_per_kg[i] ?? null),
  );
  const shown = (m: Route['marks'][number]): boolean => m.time_s !== null && m.time_s > 0 && m.name in glyphs;
  return {
    xLabel: withUnit(t.temperature, unitOf('temperature')),
    yLabel: withUnit(t.humidity, pictures.ofDryAir({ unit: unitOf('humidity') })),
    low: shownIn(chart.low_K, 'temperature'),
    high: shownIn(chart.high_K, 'temperature'),
    most: shownIn(chart.most_kg_per_kg, 'humidity'),
    saturation: lineOf(chart.saturation),
    humidities: chart.humidities.map((l) => ({ name: round(percent(l.of)), points: lineOf(l) })),
    wetBulbs: chart.wet_bulbs.map((l) => ({ name: amount(l.of, 'temperature'), points: lineOf(l) })),
    stages: chart.stages.map((_, i) => ({ number: i + 1, name: route.stages[i]?.name ?? '' })),
    airs: airsOf(chart, air),
    air,
    film,
    marks: route.marks
      .filter((m) => shown(m) && m.name !== 'ready' && m.name !== 'open')
      .flatMap((m) => {
        const at = film[nearestTime(course.time_s, m.time_s ?? 0)];
        return at ? [{ ...at, name: m.name, label: m.label }] : [];
      }),
  };
}

const nearestTime = (times: readonly number[], time: number): number => {
  const next = times.findIndex((t) => t >= time);
  return next < 0 ? times.length - 1 : next;
};

/** The air at the end of each stage; stages of the same air share a place. */
function airsOf(
  { stages, course, low_K, high_K, most_kg_per_kg }: MoistAir,
  air: readonly Point[],
): StageAir[] {
  const airs: StageAir[] = [];
  const [wide, tall] = [
    shownIn(high_K, 'temperature') - shownIn(low_K, 'temperature'),
    shownIn(most_kg_per_kg, 'humidity'),
  ];
  stages.forEach((s, i) => {
    const at = air[s.last];
    if (!at) return;
    const same = airs.find((a) => Math.abs(a.x - at.x) < 0.03 * wide && Math.abs(a.y - at.y) < 0.04 * tall);
    if (same) same.numbers.push(i + 1);
    else {
      const dew = course.air_dew_point_K[s.last] ?? 0;
      airs.push({
        ...at,
        numbers: [i + 1],
        dew: dew >= low_K ? place(dew, course.air_humidity_ratio_kg_per_kg[s.last] ?? NaN) : null,
      });
    }
  });
  return airs;
}

const stageAt = (chart: MoistAir, route: Route, i: number): string =>
  route.stages[chart.stages.findIndex((s) => i >= s.first && i <= s.last)]?.name ?? '';

/** What air and film are at one time. */
export function readMoist(chart: MoistAir, route: Route, i: number): Reading {
  const t = pictures.moist;
  const { course: c } = chart;
  const surface = c.surface_humidity_ratio_kg_per_kg[i] ?? null;
  const kelvin = (of: readonly number[]): string => amount(of[i] ?? NaN, 'temperature');
  return {
    where: `${duration(c.time_s[i] ?? NaN)}, ${stageAt(chart, route, i)}`,
    values: [
      {
        name: t.readAir,
        value: `${kelvin(c.air_temperature_K)}, ${amount(c.air_humidity_ratio_kg_per_kg[i] ?? NaN, 'humidity')}`,
        sign: { kind: 'line', style: 2 },
      },
      { name: t.readHumidity, value: percent(c.air_relative_humidity[i] ?? NaN) },
      { name: t.readDew, value: (c.air_dew_point_K[i] ?? 0) > 0 ? kelvin(c.air_dew_point_K) : '–' },
      { name: t.readWet, value: kelvin(c.air_wet_bulb_K) },
      {
        name: t.readFilm,
        value: `${kelvin(c.film_temperature_K)}, ${surface === null ? t.steam : amount(surface, 'humidity')}`,
        sign: { kind: 'line', style: 1 },
      },
    ],
  };
}

export function moistTable(chart: MoistAir, route: Route): Table {
  const t = pictures.moist;
  const { course: c } = chart;
  const [degrees, ratio, share] = [unitOf('temperature'), unitOf('humidity'), unitOf('share')];
  const kelvin = (of: readonly number[], i: number): number => shownIn(of[i] ?? NaN, 'temperature');
  return {
    columns: [
      times(t.time),
      words(t.stage),
      numbers(t.columns.airTemperature, degrees),
      numbers(t.columns.airHumidity, ratio),
      numbers(t.columns.relative, share),
      numbers(t.columns.dew, degrees),
      numbers(t.columns.wet, degrees),
      numbers(t.columns.film, degrees),
      numbers(t.columns.surface, ratio),
    ],
    rows: c.time_s.map((time, i) => {
      const surface = c.surface_humidity_ratio_kg_per_kg[i] ?? null;
      return [
        time,
        stageAt(chart, route, i),
        kelvin(c.air_temperature_K, i),
        shownIn(c.air_humidity_ratio_kg_per_kg[i] ?? NaN, 'humidity'),
        shownIn(c.air_relative_humidity[i] ?? NaN, 'share'),
        (c.air_dew_point_K[i] ?? 0) > 0 ? kelvin(c.air_dew_point_K, i) : null,
        kelvin(c.air_wet_bulb_K, i),
        kelvin(c.film_temperature_K, i),
        surface === null ? null : shownIn(surface, 'humidity'),
      ];
    }),
  };
}

export function moistKey({ marks, stages }: MoistPicture): KeyEntry[] {
  const t = pictures.moist;
  return [
    { sign: { kind: 'line', style: 1 }, words: t.film },
    { sign: { kind: 'line', style: 2 }, words: t.air },
    { sign: { kind: 'diamond' }, words: t.dewPoint },
    { sign: { kind: 'chart', of: 'saturation' }, words: t.saturation },
    { sign: { kind: 'chart', of: 'humidity' }, words: t.relatives },
    { sign: { kind: 'chart', of: 'wetBulb' }, words: t.wetBulbs },
    ...marks.map((m): KeyEntry => ({ sign: { kind: 'mark', mark: m.name }, words: m.label })),
    ...stageKey(stages),
  ];
}

/** The chart in words: the air of each stage where it ends. */
export const moistWords = (chart: MoistAir, route: Route): string =>
  chart.stages
    .map(({ last }, i) => {
      const { course: c } = chart;
      const dew = c.air_dew_point_K[last] ?? 0;
      return pictures.moist.stageAir({
        stage: route.stages[i]?.name ?? '',
        temperature: amount(c.air_temperature_K[last] ?? NaN, 'temperature'),
        humidity: amount(c.air_humidity_ratio_kg_per_kg[last] ?? NaN, 'humidity'),
        dew: dew > 0 ? amount(dew, 'temperature') : '–',
      });
    })
    .join(' ');
