/** The question that the fields of the form make. Ranges and what an empty field means come from the core. */
import type {
  IsothermKind,
  Kind,
  Question,
  TrialChoice,
  TrialForm,
  TrialKind,
  TrialNumber,
} from '../generated/contract';
import { limitText, withUnit } from '../state/display';
import { slipText } from '../state/faults';
import { readShown, type UnitReader } from '../state/units';
import { text } from '../text';
import { trial } from '../text/trial';

/** What stands in the fields. */
export interface Answers {
  /** Texts of numbers by the name of the question's member. */
  typed: Record<string, string>;
  route: Kind | '';
  /** null: the criterion chooses. */
  parameters: string[] | null;
  criterion: string;
  isotherm: string;
  robust: boolean;
  pull: boolean;
  bare: boolean;
  resample: boolean;
}

export const usual = (): Answers => ({
  typed: {},
  route: '',
  parameters: null,
  criterion: '',
  isotherm: '',
  robust: true,
  pull: true,
  bare: false,
  resample: false,
});

/** How many resamplings a check of the intervals takes: enough for the ends of a 95 % interval. */
const resamplings = 200;

export interface Asked {
  question: Question;
  /** What is wrong with a field, by its name. */
  slips: ReadonlyMap<string, string>;
}

export function questionOf(
  form: TrialForm,
  answers: Answers,
  columns: TrialChoice[],
  units: UnitReader | null = null,
): Asked {
  const question: Question = { kind: form.kind as TrialKind, columns };
  const slips = new Map<string, string>();
  const route = routeOf(form, answers);
  if (route) question.route = route;
  if (answers.parameters) {
    const told = form.parameters.filter((p) => p.route === (route ?? '')).map((p) => p.path);
    question.parameters = answers.parameters.filter((p) => told.includes(p));
    if (question.parameters.length === 0) slips.set('parameters', trial.question.noneChosen);
  } else if (answers.criterion) question.criterion = answers.criterion;
  if (answers.isotherm) question.isotherm = answers.isotherm as IsothermKind;
  if (form.bare && answers.bare) question.bare = true;
  if (!answers.robust) question.plain = true;
  if (!answers.pull) question.free = true;
  if (answers.resample) question.bootstrap = resamplings;
  const numbers: Record<string, number> = {};
  for (const number of form.numbers) {
    const read = readNumber(number, answers.typed[number.name] ?? '', units);
    if (typeof read === 'string') slips.set(number.name, read);
    else if (read !== null) numbers[number.name] = read;
  }
  return { question: Object.assign(question, numbers), slips };
}

/** The place of the trial: the one chosen, as long as the job has it, else the first. */
export const routeOf = (form: TrialForm, answers: Answers): Kind | undefined =>
  form.routes.find((r) => r === answers.route) ?? form.routes[0];

/** The number in SI, null where the field is empty, or what is wrong with it. */
function readNumber(number: TrialNumber, typed: string, units: UnitReader | null): number | null | string {
  const parsed = readShown(typed, number, units);
  if (parsed.kind === 'empty') return null;
  if (parsed.kind === 'other') return slipText('number', number.label, number.symbol);
  const display = { ...number, digits: 0 };
  const { si } = parsed;
  if (si >= number.low && si <= number.high) return si;
  return text.faults.range({
    label: number.label,
    low: limitText(number.low, display),
    high: withUnit(limitText(number.high, display), display),
  });
}
