import { expect, test } from 'vitest';
import { aborted, EngineError } from '../../src/engine/client';
import type { Listener } from '../../src/engine/sweep';
import type {
  ApiFault,
  Criterion,
  Job,
  PlanLimit,
  Request,
  Response,
  Standing,
  Variable,
} from '../../src/generated/contract';
import { marginsOf } from '../../src/plan/margins';
import { axesOf, firstFree } from '../../src/plan/optima';
import { paceOf } from '../../src/plan/pace';
import { allWording, limitWording, questionsOf } from '../../src/plan/questions';
import { axisOf } from '../../src/plan/windows';
import { PlanState, type Sweeper } from '../../src/state/plan.svelte';

const variable = (id: string, more: Partial<Variable> = {}): Variable => ({
  ...{
    id,
    label: id,
    help: '',
    unit: 'm/s',
    low: 0.001,
    high: 1,
    usual_low: 0.01,
    usual_high: 0.1,
    present: 0.02,
  },
  display: { dimension: 'speed', symbol: 'm/min', factor: 60, offset: 0, digits: 3 },
  us_display: { dimension: 'speed', symbol: 'ft/min', factor: 196.85, offset: 0, digits: 3 },
  ...{ toward: 'highest', log: true, step: 0.1, given: false },
  ...more,
});

const brief = {
  ...{ ok: true, version: 1, faults: [], message: '' },
  variables: [variable('line_speed'), variable('coat', { toward: 'lowest' })],
  aims: {
    route: 'tunnel',
    goal: { at_exit: ['touch'], by_deadline: false },
    marks: [],
    deadline: false,
    text: 'touch-dry',
  },
} satisfies Response;

/** Answers what can be asked at once, and sweeps when the test says so. */
class Crew implements Sweeper {
  asked: Request[] = [];
  sweeps: {
    request: Request;
    listener: Listener;
    resolve: (r: Response) => void;
    reject: (e: Error) => void;
  }[] = [];
  ask(request: Request): Promise<Response> {
    this.asked.push(request);
    return Promise.resolve(brief);
  }
  sweep(request: Request, signal: AbortSignal, listener: Listener = {}): Promise<Response> {
    return new Promise((resolve, reject) => {
      this.sweeps.push({ request, listener, resolve, reject });
      signal.addEventListener('abort', () => reject(aborted()));
    });
  }
}

function desk(): {
  crew: Crew;
  plans: PlanState;
  job: { name: string; coat: number };
  rest: () => Promise<void>;
} {
  const crew = new Crew();
  const job = { name: 'a', coat: 1 };
  const plans = new PlanState(
    crew,
    () => ({ ...job }) as unknown as Job,
    () => 0,
  );
  return { crew, plans, job, rest: () => new Promise((resolve) => setTimeout(resolve)) };
}

const good = (runs: number): Response => ({
  ...{ ok: true, version: 1, faults: [], message: '' },
  limits: [{ runs } as PlanLimit],
});

test('a question is worded from what is known of the route, and its news come as they are', async () => {
  const { crew, plans, rest } = desk();
  const asked = plans.ask('tunnel', 'limit', 'more', limitWording('line_speed', 0.2));
  await rest();
  expect(crew.asked[0]).toMatchObject({ op: 'variables', study: { route: 'tunnel', goal: null } });
  const [sweep] = crew.sweeps;
  expect(sweep?.request).toMatchObject({
    op: 'limits',
    limits: {
      study: { route: 'tunnel', goal: brief.aims.goal },
      limits: [{ variable: 'line_speed', wanted: 0.024 }],
    },
  });
  sweep?.listener.judged?.(12);
  sweep?.listener.news?.(good(3));
  expect(plans.plan('tunnel', 'limit')).toMatchObject({ fate: 'running', judged: 12, reply: good(3) });
  sweep?.resolve(good(9));
  await asked;
  expect(plans.plan('tunnel', 'limit')).toMatchObject({ fate: 'done', reply: good(9) });
  // What is known of the route is not asked for again for the same job.
  void plans.ask('tunnel', 'limits', 'all', allWording);
  await rest();
  expect(crew.asked).toHaveLength(1);
  plans.stop();
});

test('a plan belongs to its job: another one makes it old, another name of it does not', async () => {
  const { crew, plans, job, rest } = desk();
  const asked = plans.ask('tunnel', 'limit', 'fast', limitWording('line_speed', null));
  await rest();
  crew.sweeps[0]?.resolve(good(1));
  await asked;
  const old = (): boolean => plans.plan('tunnel', 'limit')?.basis !== plans.basis('tunnel');
  expect(old()).toBe(false);
  job.name = 'b';
  expect(old()).toBe(false);
  job.coat = 2;
  expect(old()).toBe(true);
  // Asked again, the former answer stays until there is news.
  plans.again('tunnel', 'limit');
  await rest();
  expect(plans.plan('tunnel', 'limit')).toMatchObject({ fate: 'running', reply: good(1) });
  expect(old()).toBe(true);
  crew.sweeps[1]?.listener.news?.(good(2));
  expect(old()).toBe(false);
  // A job that changes meanwhile makes the answer old as soon as it comes.
  job.coat = 3;
  crew.sweeps[1]?.resolve(good(4));
  await rest();
  expect(plans.plan('tunnel', 'limit')).toMatchObject({ fate: 'done', reply: good(4) });
  expect(old()).toBe(true);
  // Another goal asks for something else too.
  job.coat = 1;
  const before = plans.basis('tunnel');
  plans.choose('tunnel', { at_exit: [], by_deadline: true });
  expect(plans.basis('tunnel')).not.toBe(before);
  plans.choose('tunnel', null);
  expect(plans.basis('tunnel')).toBe(before);
});

test('a new question ends the one that runs, whose last word is not heard', async () => {
  const { crew, plans, rest } = desk();
  void plans.ask('tunnel', 'limit', 'fast', limitWording('line_speed', null));
  await rest();
  void plans.ask('tunnel', 'limits', 'all', allWording);
  await rest();
  expect(plans.plan('tunnel', 'limit')?.fate).toBe('stopped');
  crew.sweeps[0]?.listener.news?.(good(1));
  expect(plans.plan('tunnel', 'limit')?.reply).toBeNull();
  expect(plans.plan('tunnel', 'limits')?.fate).toBe('running');
  plans.stop();
  expect(plans.plan('tunnel', 'limits')?.fate).toBe('stopped');
  expect(plans.busy).toBe(false);
});

test('settings are put in at once: what runs ends, and nothing that is read off the core takes their place', async () => {
  const { crew, plans, rest } = desk();
  const search = plans.ask('tunnel', 'limit', 'more', limitWording('line_speed', 0.2));
  await rest();
  const applied = plans.apply('tunnel', [{ variable: 'line_speed', value: 0.024 }]).catch((e: unknown) => e);
  void plans.learn('static_oven'); // as the page does while nothing runs
  await rest();
  expect(crew.asked.map((q) => q.op)).toEqual(['variables', 'apply']);
  expect(await applied).toMatchObject({ message: '' }); // this crew gives no job back
  await search;
  expect(plans.plan('tunnel', 'limit')?.fate).toBe('stopped');
  expect(plans.busy).toBe(false);
});

test('a refusal and a break-down are told apart, and the next question works', async () => {
  const { crew, plans, rest } = desk();
  const ask = async (end: (sweep: Crew['sweeps'][number]) => void): Promise<string | undefined> => {
    const asked = plans.ask('tunnel', 'limit', 'fast', limitWording('line_speed', null));
    await rest();
    const sweep = crew.sweeps.at(-1);
    if (sweep) end(sweep);
    await asked;
    return plans.plan('tunnel', 'limit')?.fate;
  };
  const fault: ApiFault = {
    code: 'range',
    path: 'p',
    got: '',
    low: 0,
    high: 1,
    unit: '',
    advice: '',
    text: 't',
  };
  expect(await ask((s) => s.resolve({ ...good(1), ok: false, faults: [fault] }))).toBe('refused');
  expect(plans.plan('tunnel', 'limit')?.faults).toEqual([fault]);
  expect(await ask((s) => s.reject(new EngineError('out of memory')))).toBe('broken');
  expect(plans.plan('tunnel', 'limit')?.message).toBe('out of memory');
  expect(await ask((s) => s.resolve({ ...good(1), ok: false, message: 'panic: x' }))).toBe('broken');
  expect(await ask((s) => s.resolve(good(1)))).toBe('done');
});

test('what only some jobs have is offered once it is known that this one has it', () => {
  const names = (known: string[] | null): string[] =>
    questionsOf('room', known && known.map((id) => variable(id))).map((q) => q.name);
  expect(names(null)).toEqual(['late']);
  expect(names(['spray_later'])).toEqual(['late']);
  expect(names(['spray_later', 'rack_load'])).toEqual(['late', 'load']);
});

test('time left is told where the total is known and enough has been judged', () => {
  expect(paceOf({ judged: 10, total: null, begun: 0 }, 4200)).toEqual({
    elapsed: 4,
    share: null,
    left: null,
  });
  expect(paceOf({ judged: 2, total: 100, begun: 0 }, 4200)).toMatchObject({ share: 0.02, left: null });
  expect(paceOf({ judged: 25, total: 100, begun: 0 }, 4000)).toEqual({ elapsed: 4, share: 0.25, left: 12 });
  expect(paceOf({ judged: 120, total: 100, begun: 0 }, 4000)).toMatchObject({ share: 1, left: null });
});

test('the margins of several settings stand in one table, the tightest first', () => {
  const criterion = (text: string, share: number): Criterion => ({
    name: 'boiling',
    place: '',
    spot: '',
    share,
    text,
  });
  const standing = (text: string, ...margins: Criterion[]): Standing =>
    ({ text, met: true, refused: '', margins }) as Standing;
  const limit = {
    present: standing('1', criterion('a', 0.4), criterion('b', 0.9)),
    wanted: standing('2', criterion('a', 1.7)),
    value: 3,
    value_text: '3',
    margins: [criterion('c', 0.2)],
  } as PlanLimit;
  const { columns, rows } = marginsOf(limit);
  expect(columns.map((c) => c.value)).toEqual(['1', '2', '3']);
  expect(rows).toEqual([
    { text: 'a', shares: [0.4, 1.7, null] },
    { text: 'b', shares: [0.9, null, null] },
    { text: 'c', shares: [null, null, 0.2] },
  ]);
  const alone = marginsOf({ ...limit, wanted: null, value: null });
  expect(alone.columns).toHaveLength(1);
});

test('a range is read in the unit that is shown, decimal comma and all; what is no range is none', () => {
  const read = (low: string, high: string): unknown =>
    axisOf({ variable: 'line_speed', low, high }, variable('line_speed'));
  expect(read('', '')).toEqual({ variable: 'line_speed', low: 0, high: 0 });
  expect(read('1,2', '3 m/min')).toEqual({ variable: 'line_speed', low: 0.02, high: 0.05 });
  for (const [low, high] of [
    ['3', '1'],
    ['1', ''],
    ['one', '2'],
    ['0', '2'],
    ['1', '61'],
  ] as const)
    expect(read(low, high)).toBeNull();
});

test('the heat of each zone is free at first; bounds that cannot be read ask nothing', () => {
  const zone = variable('tunnel.zones[0].air_temperature_K');
  const all = [variable('line_speed'), zone];
  const free = firstFree('tunnel', all);
  expect(free.filter((f) => f.on).map((f) => f.variable)).toEqual([zone.id]);
  expect(axesOf(free, all)).toEqual([{ variable: zone.id, low: 0, high: 0 }]);
  const bounded = free.map((f) => ({ ...f, low: '1,2', high: '3' }));
  expect(axesOf(bounded, all)).toEqual([{ variable: zone.id, low: 0.02, high: 0.05 }]);
  expect(
    axesOf(
      free.map((f) => ({ ...f, low: '3', high: '1' })),
      all,
    ),
  ).toBeNull();
});
