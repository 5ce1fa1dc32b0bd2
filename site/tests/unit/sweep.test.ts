import { afterEach, expect, test, vi } from 'vitest';
import { isAbort } from '../../src/engine/client';
import { SweepEngine } from '../../src/engine/sweep';
import { bytesOf, FakePort, valueOf } from './ports';

const [planner, core] = [
  { exec: 'x', wasm: 'p', words: 'w', units: 'si' as const },
  { exec: 'x', wasm: 'c', words: 'w', units: 'si' as const },
];
const module = {} as WebAssembly.Module;
const question = { op: 'limits', job: { a: 1 } };
const good = { ok: true, faults: [] };

function staff(size = 2): { engine: SweepEngine; hired: FakePort[]; lead: () => FakePort } {
  const hired: FakePort[] = [];
  const engine = new SweepEngine(
    () => {
      const port = new FakePort();
      hired.push(port);
      return port;
    },
    planner,
    { source: core, module: () => module },
    size,
  );
  const lead = (): FakePort => {
    const found = hired.findLast((p) => !p.gone && p.told.some((m) => m.kind === 'sweep'));
    if (!found) throw new Error('nobody leads');
    return found;
  };
  return { engine, hired, lead };
}

/** What became of a promise that is expected to fail. */
const failure = (asked: Promise<unknown>): Promise<unknown> => asked.catch((e: unknown) => e);
const anyone = (): AbortSignal => new AbortController().signal;
const judging = (port: FakePort): unknown => {
  const last = port.told.at(-1);
  return last?.kind === 'ask' ? valueOf(last.bytes) : null;
};

afterEach(() => void vi.useRealTimers());

test('a batch is spread over the crew and comes back in its order', async () => {
  const { engine, hired, lead } = staff();
  const judged: number[] = [];
  const asked = engine.sweep(question, anyone(), { judged: (n) => judged.push(n) });
  expect(hired).toHaveLength(3);
  expect(hired.map((p) => p.told[0])).toEqual(
    hired.map((_, i) => ({ kind: 'start', source: i ? core : planner, module: i ? module : null })),
  );
  const first = lead().told[1];
  expect(first?.kind === 'sweep' && [valueOf(first.bytes), first.workers]).toEqual([
    { ...question, units: 'si' },
    2,
  ]);

  const requests = ['a', 'b', 'c'].map(bytesOf);
  lead().say({ kind: 'batch', batch: 7, requests, settings: [4, 4, 1] });
  const [, one, two] = hired as [FakePort, FakePort, FakePort];
  expect([one, two].map(judging)).toEqual(['a', 'b']);
  two.reply('B'); // the second is through first and takes what is left
  expect(judging(two)).toBe('c');
  two.reply('C');
  expect(lead().told.at(-1)?.kind).toBe('sweep');
  one.reply('A');
  const back = lead().told.at(-1);
  expect(back?.kind === 'judged' && [back.batch, back.replies.map(valueOf)]).toEqual([7, ['A', 'B', 'C']]);
  expect(judged).toEqual([4, 5, 9]);

  lead().reply({ ...good, limits: [] });
  expect(await asked).toEqual({ ...good, limits: [] });
});

test('the lead of the next sweep starts from what the first has compiled; one piece needs one of the crew', () => {
  const { engine, hired, lead } = staff();
  const compiled = {} as WebAssembly.Module;
  const stop = new AbortController();
  void failure(engine.ask(question, stop.signal));
  expect(hired).toHaveLength(1);
  lead().say({ kind: 'ready', module: compiled });
  lead().say({ kind: 'batch', batch: 0, requests: [bytesOf('a')], settings: [1] });
  expect(hired).toHaveLength(2);
  stop.abort();
  void failure(engine.ask(question, anyone()));
  expect(hired[2]?.told[0]).toEqual({ kind: 'start', source: planner, module: compiled });
});

test('an empty batch comes back at once', () => {
  const { engine, lead } = staff();
  void failure(engine.sweep(question, anyone()));
  lead().say({ kind: 'batch', batch: 1, requests: [], settings: [] });
  expect(lead().told.at(-1)).toEqual({ kind: 'judged', batch: 1, replies: [] });
  engine.close();
});

test('what is known so far is handed on, and nothing of an earlier sweep', async () => {
  const { engine, lead } = staff();
  const news: unknown[] = [];
  const asked = engine.sweep(question, anyone(), { news: (reply) => news.push(reply) });
  const first = lead().told[1];
  const id = first?.kind === 'sweep' ? first.id : 0;
  lead().say({ kind: 'news', id, bytes: bytesOf(1) });
  lead().say({ kind: 'news', id: id - 1, bytes: bytesOf(2) });
  lead().say({ kind: 'news', id, bytes: new Uint8Array([123]) });
  expect(news).toEqual([1]);
  lead().reply(good);
  await asked;
});

test('what the lead can tell alone needs no crew', async () => {
  const { engine, hired } = staff();
  const asked = engine.ask({ op: 'variables' }, anyone());
  expect(hired).toHaveLength(1);
  hired[0]?.reply(good);
  expect(await asked).toEqual(good);
});

test('an abort lets all workers go at once, and the next sweep hires new ones', async () => {
  const { engine, hired, lead } = staff();
  const stop = new AbortController();
  const asked = failure(engine.sweep(question, stop.signal));
  lead().say({ kind: 'batch', batch: 0, requests: ['a', 'b', 'c'].map(bytesOf), settings: [1, 1, 1] });
  stop.abort();
  expect(isAbort(await asked)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, true, true]);
  hired[1]?.reply('a last word');

  const next = engine.sweep(question, anyone());
  expect(hired).toHaveLength(6);
  // Nothing of the former batch is left over.
  expect(hired.slice(4).map((p) => p.told.length)).toEqual([1, 1]);
  lead().reply(good);
  expect(await next).toEqual(good);
  expect(isAbort(await failure(engine.sweep(question, stop.signal)))).toBe(true);
});

test('a new question takes the place of the one that runs', async () => {
  const { engine, hired, lead } = staff(1);
  const former = failure(engine.sweep(question, anyone()));
  const next = engine.sweep(question, anyone());
  expect(isAbort(await former)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, true, false, false]);
  lead().reply(good);
  await next;
});

test.each([
  ['the lead', 0],
  ['one of the crew', 1],
])('%s that dies ends the sweep with the reason, and the next one works', async (_, who) => {
  const { engine, hired, lead } = staff();
  const asked = failure(engine.sweep(question, anyone()));
  lead().say({ kind: 'batch', batch: 0, requests: ['a', 'b'].map(bytesOf), settings: [1, 1] });
  hired[who]?.say({ kind: 'dead', reason: 'out of memory' });
  expect(await asked).toMatchObject({ name: 'EngineError', message: 'out of memory' });
  expect(hired.every((p) => p.gone)).toBe(true);
  const next = engine.sweep(question, anyone());
  lead().say({ kind: 'batch', batch: 0, requests: [bytesOf('a')], settings: [1] });
  hired[4]?.reply('A');
  lead().reply(good);
  expect(await next).toEqual(good);
});

test('a core that has panicked says so and is replaced', async () => {
  const { engine, hired, lead } = staff(1);
  const asked = engine.sweep(question, anyone());
  lead().reply({ ok: false, faults: [], message: 'panic: x' });
  expect(await asked).toMatchObject({ message: 'panic: x' });
  expect(hired.every((p) => p.gone)).toBe(true);
});

test('workers stay for the next question, and go when there is none', async () => {
  vi.useFakeTimers();
  const { engine, hired, lead } = staff();
  const ask = async (): Promise<void> => {
    const asked = engine.sweep(question, anyone());
    for (const port of hired.filter((p) => !p.gone)) port.say({ kind: 'ready', module });
    lead().reply(good);
    await asked;
  };
  await ask();
  await vi.advanceTimersByTimeAsync(9_000);
  await ask();
  await vi.advanceTimersByTimeAsync(9_000);
  expect(hired.map((p) => p.gone)).toEqual([false, false, false]);
  await vi.advanceTimersByTimeAsync(2_000);
  expect(hired.map((p) => p.gone)).toEqual([true, true, true]);
  await ask();
  expect(hired).toHaveLength(6);
});

test('workers hired for a question that is about to come take it, or go again', async () => {
  vi.useFakeTimers();
  const { engine, hired, lead } = staff();
  engine.warm();
  engine.warm();
  expect(hired).toHaveLength(3);
  for (const port of hired) port.say({ kind: 'ready', module });
  const asked = engine.sweep(question, anyone());
  engine.warm();
  await vi.advanceTimersByTimeAsync(60_000); // the question itself may take its time
  lead().reply(good);
  expect(await asked).toEqual(good);
  expect(hired).toHaveLength(3);
  await vi.advanceTimersByTimeAsync(10_000);
  engine.warm();
  expect(hired).toHaveLength(6);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(hired.every((p) => p.gone)).toBe(true);
});

test('a worker that never starts is given up, not waited for', async () => {
  vi.useFakeTimers();
  const { engine } = staff();
  const asked = failure(engine.sweep(question, anyone()));
  await vi.advanceTimersByTimeAsync(10_000);
  expect(await asked).toMatchObject({ name: 'EngineError', message: 'The worker did not start.' });
});

test('bytes that are no JSON are an error, not a hang', async () => {
  const { engine, lead } = staff();
  const asked = failure(engine.sweep(question, anyone()));
  const first = lead().told[1];
  if (first?.kind === 'sweep') lead().say({ kind: 'answer', id: first.id, bytes: new Uint8Array([123]) });
  expect(await asked).toMatchObject({ name: 'EngineError' });
});
