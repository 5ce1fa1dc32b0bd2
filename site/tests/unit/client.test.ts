import { expect, test, vi } from 'vitest';
import { Engine, isAbort } from '../../src/engine/client';
import { FakePort } from './ports';

function staff(): { engine: Engine; hired: FakePort[] } {
  const hired: FakePort[] = [];
  const engine = new Engine(
    () => {
      const port = new FakePort();
      hired.push(port);
      return port;
    },
    { exec: 'x', wasm: 'y', words: 'w', units: 'si' as const },
  );
  return { engine, hired };
}

test('one worker answers one question after the other', async () => {
  const { engine, hired } = staff();
  const first = engine.predict({ a: 1 });
  hired[0]?.reply({ ok: true, result: { version: 1 } });
  expect(await first).toEqual({ kind: 'answer', result: { version: 1 } });
  const second = engine.predict({ a: 2 });
  hired[0]?.reply({ ok: false, faults: [{ path: 'p' }] });
  expect(await second).toEqual({ kind: 'refused', faults: [{ path: 'p' }] });
  expect(hired).toHaveLength(1);
  const asked = hired[0]?.told[1];
  expect(asked?.kind === 'ask' && JSON.parse(new TextDecoder().decode(asked.bytes))).toEqual({
    op: 'predict',
    job: { a: 1 },
    units: 'si',
  });
});

test('the latest question wins; the overtaken one is told so and its worker is let go', async () => {
  const { engine, hired } = staff();
  const first = engine.predict(1).catch((e: unknown) => e);
  const second = engine.predict(2);
  expect(isAbort(await first)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
  hired[1]?.reply({ ok: true, faults: [], result: {} });
  expect((await second).kind).toBe('answer');
});

test('abort ends the worker and a fresh one is started with the compiled module', async () => {
  const { engine, hired } = staff();
  engine.warm();
  const module = {} as WebAssembly.Module;
  hired[0]?.say({ kind: 'ready', module });
  const stop = new AbortController();
  const asked = engine.predict(1, stop.signal).catch((e: unknown) => e);
  stop.abort();
  expect(isAbort(await asked)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
  expect(hired[1]?.told[0]).toMatchObject({ kind: 'start', module });
});

test('after an answer another worker stands by and takes the place of one that is let go', async () => {
  const { engine, hired } = staff();
  const ask = async (): Promise<void> => {
    const answered = engine.predict(1);
    hired
      .findLast((p) => !p.gone && p.told.at(-1)?.kind === 'ask')
      ?.reply({ ok: true, faults: [], result: {} });
    expect((await answered).kind).toBe('answer');
  };
  engine.warm();
  hired[0]?.say({ kind: 'ready', module: {} as WebAssembly.Module });
  await ask();
  await ask();
  expect(hired.map((p) => p.told.length)).toEqual([3, 1]);
  // An abort that comes after its answer ends nothing; one that comes before it costs the worker.
  const late = new AbortController();
  const answered = engine.predict(2, late.signal);
  hired[0]?.reply({ ok: true, faults: [], result: {} });
  await answered;
  late.abort();
  expect(hired.map((p) => p.gone)).toEqual([false, false]);
  const stop = new AbortController();
  const lost = engine.predict(2, stop.signal).catch((e: unknown) => e);
  stop.abort();
  expect(isAbort(await lost)).toBe(true);
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
  await ask();
  expect(hired).toHaveLength(3);
  // One that dies while it stands by is not waited for.
  hired[2]?.say({ kind: 'dead', reason: 'out of memory' });
  await ask();
  expect(hired).toHaveLength(4);
  engine.close();
  expect(hired.map((p) => p.gone)).toEqual([true, true, true, true]);
});

test('a worker that never starts is given up, not waited for', async () => {
  vi.useFakeTimers();
  const { engine, hired } = staff();
  engine.warm();
  hired[0]?.say({ kind: 'ready', module: {} as WebAssembly.Module });
  const stop = new AbortController();
  const lost = engine.predict(1, stop.signal).catch((e: unknown) => e);
  stop.abort();
  await lost;
  const failed = engine.predict(2).catch((e: unknown) => e);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'The worker did not start.' });
  const next = engine.predict(3);
  hired[2]?.say({ kind: 'ready', module: {} as WebAssembly.Module });
  await vi.advanceTimersByTimeAsync(60_000); // the question itself may take its time
  hired[2]?.reply({ ok: true, faults: [], result: {} });
  expect((await next).kind).toBe('answer');
  vi.useRealTimers();
});

test('a panic becomes a message and a fresh worker', async () => {
  const { engine, hired } = staff();
  const broken = engine.predict(1);
  hired[0]?.reply({ ok: false, faults: [], message: 'panic: index out of range' });
  expect(await broken).toEqual({ kind: 'broken', message: 'panic: index out of range' });
  expect(hired.map((p) => p.gone)).toEqual([true, false]);
});

test('a core that dies fails its question, and the next one finds a fresh worker', async () => {
  const { engine, hired } = staff();
  const failed = engine.describe().catch((e: unknown) => e);
  hired[0]?.say({ kind: 'dead', reason: 'out of memory' });
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'out of memory' });
  const again = engine.describe();
  hired[0]?.say({ kind: 'dead', reason: 'a last word' });
  hired[1]?.reply({ ok: true, catalogue: { version: 1 } });
  expect(await again).toEqual({ version: 1 });
});

test('bytes that are no JSON are an error, not a hang', async () => {
  const { engine, hired } = staff();
  const failed = engine.predict(1).catch((e: unknown) => e);
  hired[0]?.say({ kind: 'answer', id: 1, bytes: new Uint8Array([123]) });
  expect(await failed).toMatchObject({ name: 'EngineError' });
});

test('a check tells all faults, none for a good job, and fails where there is neither', async () => {
  const { engine, hired } = staff();
  const refused = engine.check(1);
  hired[0]?.reply({ ok: false, faults: [{ path: 'p' }, { path: 'q' }], message: '' });
  expect(await refused).toHaveLength(2);
  const good = engine.check(2);
  hired[0]?.reply({ ok: true, faults: [], job: {}, message: '' });
  expect(await good).toEqual([]);
  const failed = engine.check(3).catch((e: unknown) => e);
  hired[0]?.reply({ ok: false, faults: [], message: 'panic: x' });
  expect(await failed).toMatchObject({ name: 'EngineError', message: 'panic: x' });
});
