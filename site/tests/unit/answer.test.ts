import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Predicted } from '../../src/engine/client';
import type { ApiFault, Job } from '../../src/generated/contract';
import { AnswerState, type Predictor, type Question } from '../../src/state/answer.svelte';
import { result } from '../fixtures/result';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const named = (name: string): Job => ({ name }) as Job;
const whole = (name: string) => (): Question => ({ job: named(name), whole: true });
const torn = (name: string) => (): Question => ({ job: named(name), whole: false });

interface Asked {
  op: 'predict' | 'check';
  name: string;
  signal: AbortSignal;
  answer: (with_: unknown) => void;
}

/** An engine whose answers are given by hand. */
class ByHand implements Predictor {
  asked: Asked[] = [];
  predict = (job: Job, signal: AbortSignal): Promise<Predicted> => this.#ask('predict', job, signal);
  check = (job: Job, signal: AbortSignal): Promise<ApiFault[]> => this.#ask('check', job, signal);
  #ask<T>(op: Asked['op'], { name }: Job, signal: AbortSignal): Promise<T> {
    return new Promise((resolve, reject) => {
      this.asked.push({ op, name, signal, answer: resolve as Asked['answer'] });
      signal.addEventListener('abort', () => reject(new DOMException('overtaken', 'AbortError')));
    });
  }
  /** Answers the question put last. */
  async say(with_: Predicted | ApiFault[]): Promise<void> {
    this.asked.at(-1)?.answer(with_);
    await vi.advanceTimersByTimeAsync(1);
  }
}

const fault: ApiFault = {
  code: 'range',
  path: 'film.wet_coat_kg_per_m2',
  got: '5',
  low: 0,
  high: 1,
  unit: '',
  advice: '',
  text: 'no',
};

async function put(state: AnswerState, question: () => Question): Promise<void> {
  state.schedule(question);
  await vi.advanceTimersByTimeAsync(1);
}

test('a change that comes alone is answered at once, several in a row after the last', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 40);
  for (const key of ['1', '2', '3']) {
    state.schedule(whole(key));
    await vi.advanceTimersByTimeAsync(30);
  }
  expect(engine.asked.map((a) => a.name)).toEqual(['1']);
  await vi.advanceTimersByTimeAsync(15);
  expect(engine.asked.map((a) => a.name)).toEqual(['1', '3']);
  expect(engine.asked[0]?.signal.aborted).toBe(true);
  await vi.advanceTimersByTimeAsync(100);
  state.schedule(whole('4'));
  await vi.advanceTimersByTimeAsync(1);
  expect(engine.asked.map((a) => a.name)).toEqual(['1', '3', '4']);
  expect(state.phase).toBe('computing');
});

test('the first key lets go of what runs, and the latest question wins', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  await put(state, whole('first'));
  state.schedule(whole('second'));
  expect(engine.asked[0]?.signal.aborted).toBe(true);
  await vi.advanceTimersByTimeAsync(1);
  engine.asked[0]?.answer({ kind: 'broken', message: 'too late to matter' });
  await engine.say({ kind: 'answer', result });
  expect([state.phase, state.count, state.good?.name]).toEqual(['fresh', 1, 'second']);
});

test('what stands around the answers follows when they are painted, the first time at once', async () => {
  const engine = new ByHand();
  const frames: (() => void)[] = [];
  const state = new AnswerState(engine, 0, (then) => frames.push(then));
  await put(state, whole('1'));
  await engine.say({ kind: 'answer', result });
  expect([state.result, state.details, frames.length]).toEqual([result, result, 0]);
  const [second, third] = [{ ...result }, { ...result }];
  for (const next of [second, third]) {
    await put(state, whole('next'));
    await engine.say({ kind: 'answer', result: next });
  }
  expect(state.result).toBe(third);
  expect(state.details).toBe(result);
  // Of two answers between frames the latter is shown.
  frames[0]?.();
  expect(state.details).toBe(third);
});

test('a refused job leaves the last good answer, marked as old, until a good one comes', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  await put(state, whole('1'));
  await engine.say({ kind: 'answer', result });
  await put(state, whole('2'));
  await engine.say({ kind: 'refused', faults: [fault] });
  expect([state.result, state.old, state.faults.length, state.phase]).toEqual([result, true, 1, 'refused']);
  expect(state.good?.name).toBe('1');
  await put(state, whole('3'));
  await engine.say({ kind: 'broken', message: 'panic: x' });
  expect([state.result, state.old, state.message, state.phase]).toEqual([result, true, 'panic: x', 'broken']);
  await put(state, whole('4'));
  await engine.say({ kind: 'answer', result });
  expect([state.old, state.faults.length, state.phase, state.good?.name]).toEqual([false, 0, 'fresh', '4']);
});

test('a form that cannot be read is only checked, and stops a run of what stood before', async () => {
  const engine = new ByHand();
  const state = new AnswerState(engine, 0);
  await put(state, whole('good'));
  await put(state, torn('bad'));
  expect(engine.asked.map((a) => [a.op, a.signal.aborted])).toEqual([
    ['predict', true],
    ['check', false],
  ]);
  expect([state.phase, state.old]).toEqual(['refused', false]); // there is no answer yet that could be old
  await engine.say([fault]);
  expect(state.faults).toEqual([fault]);
});

test('after a visit that ended with a bad job, the last good answer is computed again, as an old one', async () => {
  for (const question of [whole('bad'), torn('bad')]) {
    const engine = new ByHand();
    const state = new AnswerState(engine, 0);
    state.turn(named('good'));
    await put(state, question);
    await engine.say(question().whole ? { kind: 'refused', faults: [fault] } : [fault]);
    expect([engine.asked.at(-1)?.op, engine.asked.at(-1)?.name]).toEqual(['predict', 'good']);
    await engine.say({ kind: 'answer', result });
    expect([state.result, state.old, state.phase]).toEqual([result, true, 'refused']);
    expect(state.faults).toEqual([fault]);
    // A later refusal has the answer already.
    await put(state, whole('worse'));
    await engine.say({ kind: 'refused', faults: [fault] });
    expect(engine.asked).toHaveLength(3);
    expect(state.old).toBe(true);
  }
});
