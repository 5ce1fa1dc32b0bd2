import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Predicted } from '../../src/engine/client';
import { AnswerState, type Predictor } from '../../src/state/answer.svelte';
import { result } from '../fixtures/result';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** An engine whose answers are given by hand. */
class ByHand implements Predictor {
  asked: { job: unknown; signal: AbortSignal; answer: (p: Predicted) => void }[] = [];
  predict(job: unknown, signal: AbortSignal): Promise<Predicted> {
    return new Promise((answer, reject) => {
      this.asked.push({ job, signal, answer });
      signal.addEventListener('abort', () => reject(new DOMException('overtaken', 'AbortError')));
    });
  }
}

const fault = {
  code: 'range',
  path: 'film.wet_coat_kg_per_m2',
  got: '5',
  low: 0,
  high: 1,
  unit: '',
  advice: '',
  text: 'no',
} as const;

test('typing is waited out, then one question is put', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 150);
  for (const key of [1, 2, 3]) {
    state.schedule(() => key);
    await vi.advanceTimersByTimeAsync(100);
  }
  expect(engine.asked).toHaveLength(0);
  await vi.advanceTimersByTimeAsync(60);
  expect(engine.asked.map((a) => a.job)).toEqual([3]);
  expect(state.phase).toBe('computing');
});

test('the latest question wins, whatever comes back first', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  state.schedule(() => 'first');
  await vi.advanceTimersByTimeAsync(1);
  state.schedule(() => 'second');
  await vi.advanceTimersByTimeAsync(1);
  expect(engine.asked[0]?.signal.aborted).toBe(true);
  engine.asked[1]?.answer({ kind: 'answer', result });
  await vi.advanceTimersByTimeAsync(1);
  expect(state.phase).toBe('fresh');
  expect(state.count).toBe(1);
});

test('a refused job leaves the last good answer, marked as old, until a good one comes', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  const put = async (job: unknown, answer: Predicted): Promise<void> => {
    state.schedule(() => job);
    await vi.advanceTimersByTimeAsync(1);
    engine.asked.at(-1)?.answer(answer);
    await vi.advanceTimersByTimeAsync(1);
  };
  await put(1, { kind: 'answer', result });
  await put(2, { kind: 'refused', faults: [{ ...fault }] });
  expect([state.result, state.old, state.faults.length, state.phase]).toEqual([result, true, 1, 'refused']);
  await put(3, { kind: 'broken', message: 'panic: x' });
  expect([state.result, state.old, state.message, state.phase]).toEqual([result, true, 'panic: x', 'broken']);
  await put(4, { kind: 'answer', result });
  expect([state.old, state.faults.length, state.phase]).toEqual([false, 0, 'fresh']);
});

test('a form that cannot be read is not put to the core, and stops a run of what stood before', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  state.schedule(() => 'good');
  await vi.advanceTimersByTimeAsync(1);
  state.schedule(() => null);
  await vi.advanceTimersByTimeAsync(1);
  expect(engine.asked).toHaveLength(1);
  expect(engine.asked[0]?.signal.aborted).toBe(true);
  expect(state.phase).toBe('refused');
  expect(state.old).toBe(false); // there is no answer yet that could be old
});
