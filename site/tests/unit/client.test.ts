import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Engine, isAbort, type Predicted } from '../../src/engine/client';
import { FakePort, valueOf } from './ports';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const module = {} as WebAssembly.Module;
const job = { room: {}, static_oven: {}, tunnel: {} };
const oven = { room: null, static_oven: {}, tunnel: null };

function staff(size = 1): { engine: Engine; hired: FakePort[] } {
  const hired: FakePort[] = [];
  const hire = (): FakePort => {
    const port = new FakePort();
    hired.push(port);
    return port;
  };
  const engine = new Engine(hire, { exec: 'x', wasm: 'y', words: 'w', units: 'si' as const }, size);
  return { engine, hired };
}

/** An engine with a worker that is ready. */
function ready(size = 1): { engine: Engine; hired: FakePort[]; first: FakePort } {
  const { engine, hired } = staff(size);
  engine.warm();
  const [first] = hired;
  if (!first) throw new Error('nobody was hired');
  first.say({ kind: 'ready', module });
  return { engine, hired, first };
}

/** What a worker was asked, in order. */
const asked = (port: FakePort | undefined): unknown[] =>
  (port?.told ?? []).flatMap((m) => (m.kind === 'ask' ? [valueOf(m.bytes)] : []));

const routesOf = (port: FakePort | undefined): unknown[] =>
  asked(port).flatMap((q) => (q as { routes: string[] }).routes);

/** The answer of the core to some routes. */
const parts = (derivatives: Record<string, number>): unknown => ({
  ok: true,
  faults: [],
  result: {
    version: 1,
    routes: Object.entries(derivatives).map(([kind, count]) => ({ kind, status: { derivatives: count } })),
  },
});
const part = (kind: string): unknown => parts({ [kind]: 1 });

const kindsOf = (p: Predicted): unknown[] => (p.kind === 'answer' ? p.result.routes.map((r) => r.kind) : []);
const failure = (question: Promise<unknown>): Promise<unknown> => question.catch((e: unknown) => e);

test('a question waits for the core; one worker then answers one after the other', async () => {
  const { engine, hired } = staff();
  const first = engine.predict(oven);
  expect(asked(hired[0])).toEqual([]);
  hired[0]?.say({ kind: 'ready', module });
  expect(asked(hired[0])).toEqual([{ op: 'predict', job: oven, routes: ['static_oven'], units: 'si' }]);
  hired[0]?.reply(part('static_oven'));
  expect(kindsOf(await first)).toEqual(['static_oven']);
  const second = engine.predict(oven);
  hired[0]?.reply({ ok: false, faults: [{ path: 'p' }] });
  expect(await second).toEqual({ kind: 'refused', faults: [{ path: 'p' }] });
  expect(hired).toHaveLength(1);
});

test('workers share the routes, the one with most work alone, and the answer has them in order', async () => {
  const { engine, hired, first } = ready(2);
  const question = engine.predict(job);
  expect(routesOf(first)).toEqual(['tunnel']);
  expect(hired).toHaveLength(2); // only now, from the core that the first has compiled
  expect(hired[1]?.told[0]).toMatchObject({ kind: 'start', module });
  hired[1]?.say({ kind: 'ready', module });
  expect(routesOf(hired[1])).toEqual(['static_oven', 'room']);
  hired[1]?.reply(parts({ room: 30, static_oven: 20 }));
  first.reply(parts({ tunnel: 10 }));
  expect(kindsOf(await question)).toEqual(['room', 'static_oven', 'tunnel']);

  void failure(engine.predict(job));
  expect(asked(hired[1]).at(-1)).toMatchObject({ routes: ['room'] });
  expect(asked(first).at(-1)).toMatchObject({ routes: ['static_oven', 'tunnel'] });
  expect(hired).toHaveLength(2);
});

test('three workers take a route each, one takes all', async () => {
  const three = ready(3);
  const question = three.engine.predict(job);
  for (const port of three.hired.slice(1)) port.say({ kind: 'ready', module });
  three.hired[2]?.say({ kind: 'ready', module });
  expect(three.hired.map(routesOf)).toEqual([['tunnel'], ['static_oven'], ['room']]);
  for (const [i, kind] of ['tunnel', 'static_oven', 'room'].entries()) three.hired[i]?.reply(part(kind));
  expect(kindsOf(await question)).toEqual(['room', 'static_oven', 'tunnel']);

  const one = ready();
  void failure(one.engine.predict(job));
  expect(routesOf(one.first)).toEqual(['tunnel', 'static_oven', 'room']);
});

test('one refusal speaks for all routes', async () => {
  const { engine, hired, first } = ready(2);
  const question = engine.predict(job);
  hired[1]?.say({ kind: 'ready', module });
  hired[1]?.reply({ ok: false, faults: [{ path: 'p' }] });
  expect(await question).toEqual({ kind: 'refused', faults: [{ path: 'p' }] });
  first.reply({ ok: false, faults: [{ path: 'p' }] });
  expect(hired.map((p) => p.gone)).toEqual([false, false]);
});

test('the latest question wins; the worker may finish with the overtaken one for a moment', async () => {
  const { engine, hired, first } = ready();
  const one = failure(engine.predict(oven));
  const two = engine.predict(oven);
  expect(isAbort(await one)).toBe(true);
  await vi.advanceTimersByTimeAsync(30);
  expect(asked(first)).toHaveLength(1);
  first.reply(part('static_oven'));
  expect(asked(first)).toHaveLength(2);
  await vi.advanceTimersByTimeAsync(1000); // no more haste
  first.reply(part('static_oven'));
  expect((await two).kind).toBe('answer');
  expect(hired).toHaveLength(1);
  expect(first.gone).toBe(false);
});

test('a worker that goes on for longer is let go, and another takes its place', async () => {
  const { engine, hired, first } = ready();
  const stop = new AbortController();
  const one = failure(engine.predict(oven, stop.signal));
  stop.abort();
  expect(isAbort(await one)).toBe(true);
  await vi.advanceTimersByTimeAsync(100);
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
  expect(hired[1]?.told[0]).toMatchObject({ kind: 'start', module });
  const two = engine.predict(oven);
  hired[1]?.say({ kind: 'ready', module });
  first.reply(part('room')); // a last word
  hired[1]?.reply(part('static_oven'));
  expect(kindsOf(await two)).toEqual(['static_oven']);
});

test('an abort that comes after the answer ends nothing', async () => {
  const { engine, first } = ready();
  const late = new AbortController();
  const question = engine.predict(oven, late.signal);
  first.reply(part('static_oven'));
  await question;
  late.abort();
  await vi.advanceTimersByTimeAsync(100);
  expect(first.gone).toBe(false);
  expect(isAbort(await failure(engine.predict(oven, late.signal)))).toBe(true);
});

test('a worker that never starts is given up, not waited for', async () => {
  const { engine, hired } = ready();
  void failure(engine.predict(oven));
  void failure(engine.predict(oven));
  await vi.advanceTimersByTimeAsync(100);
  const failed = failure(engine.predict(oven));
  await vi.advanceTimersByTimeAsync(10_000);
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'The worker did not start.' });
  const next = engine.predict(oven);
  hired[2]?.say({ kind: 'ready', module });
  await vi.advanceTimersByTimeAsync(60_000); // the question itself may take its time
  hired[2]?.reply(part('static_oven'));
  expect((await next).kind).toBe('answer');
});

test('where there is no room for a second worker, one answers alone', async () => {
  const { engine, hired, first } = ready(2);
  const question = engine.predict(job);
  hired[1]?.say({ kind: 'dead', reason: 'out of memory' });
  first.reply(part('tunnel'));
  first.reply(parts({ room: 1, static_oven: 1 }));
  expect(kindsOf(await question)).toEqual(['room', 'static_oven', 'tunnel']);
  void failure(engine.predict(job));
  expect(hired).toHaveLength(2);
});

test('a panic becomes a message and a fresh worker', async () => {
  const { engine, hired, first } = ready();
  const broken = engine.predict(oven);
  first.reply({ ok: false, faults: [], message: 'panic: index out of range' });
  expect(await broken).toEqual({ kind: 'broken', message: 'panic: index out of range' });
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
});

test('a core that dies fails its question, and the next one finds a fresh worker', async () => {
  const { engine, hired } = staff();
  const failed = failure(engine.describe());
  hired[0]?.say({ kind: 'dead', reason: 'out of memory' });
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'out of memory' });
  const again = engine.describe();
  hired[0]?.say({ kind: 'dead', reason: 'a last word' });
  hired[1]?.say({ kind: 'ready', module });
  hired[1]?.reply({ ok: true, faults: [], catalogue: { version: 1 } });
  expect(await again).toEqual({ version: 1 });
});

test('a worker that dies over a part fails the whole question', async () => {
  const { engine, hired, first } = ready(2);
  const failed = failure(engine.predict(job));
  hired[1]?.say({ kind: 'ready', module });
  first.onerror?.({ message: 'The worker has ended.' });
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'The worker has ended.' });
  const again = engine.predict(oven);
  hired[1]?.reply(part('static_oven')); // what was overtaken
  hired[1]?.reply(part('static_oven'));
  expect((await again).kind).toBe('answer');
});

test('bytes that are no JSON are an error, not a hang', async () => {
  const { engine, first } = ready();
  const failed = failure(engine.predict(oven));
  first.say({ kind: 'answer', id: 1, bytes: new Uint8Array([123]) });
  expect(await failed).toMatchObject({ name: 'EngineError' });
});

test('a check tells all faults, none for a good job, and fails where there is neither', async () => {
  const { engine, first } = ready();
  const refused = engine.check(1);
  first.reply({ ok: false, faults: [{ path: 'p' }, { path: 'q' }], message: '' });
  expect(await refused).toHaveLength(2);
  const good = engine.check(2);
  first.reply({ ok: true, faults: [], job: {}, message: '' });
  expect(await good).toEqual([]);
  const failed = failure(engine.check(3));
  first.reply({ ok: false, faults: [], message: 'panic: x' });
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'panic: x' });
});

test('closing lets everyone go and tells who waits', async () => {
  const { engine, hired } = ready(2);
  const left = failure(engine.predict(job));
  engine.close();
  expect(isAbort(await left)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, true]);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(hired).toHaveLength(2);
});
