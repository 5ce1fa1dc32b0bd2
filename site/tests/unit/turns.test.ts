import { afterEach, beforeEach, expect, test, vi } from 'vitest';

let frames: FrameRequestCallback[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  vi.resetModules();
  frames = [];
  vi.stubGlobal('requestAnimationFrame', (f: FrameRequestCallback) => frames.push(f));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A frame, without what it puts off until after it is painted. */
const frame = (): void => frames.splice(0).forEach((f) => f(0));
/** The first frame after a rest is for the words of the answer. */
const rested = (): void => {
  frame();
  painted();
  frame();
};
const painted = (): void => void vi.runAllTimers();

test('pictures are drawn one a frame, after it is painted, and behind the answer', async () => {
  const { takeTurn } = await import('../../src/chart/turns');
  const drawn: string[] = [];
  takeTurn(() => drawn.push('first'));
  takeTurn(() => drawn.push('second'));
  rested();
  expect(drawn).toEqual([]);
  painted();
  expect(drawn).toEqual(['first']);
  frame();
  painted();
  expect(drawn).toEqual(['first', 'second']);
  frame();
  expect(frames).toEqual([]);
});

test('a turn given up between a frame and its painting is not taken', async () => {
  const { takeTurn } = await import('../../src/chart/turns');
  const drawn: string[] = [];
  const giveUp = takeTurn(() => drawn.push('gone'));
  rested();
  giveUp();
  painted();
  expect(drawn).toEqual([]);
  takeTurn(() => drawn.push('later'));
  frame();
  painted();
  rested();
  painted();
  expect(drawn).toEqual(['later']);
});

test('a drawing that fails does not hold up the next', async () => {
  const { takeTurn } = await import('../../src/chart/turns');
  const drawn: string[] = [];
  takeTurn(() => {
    throw new Error('no picture');
  });
  takeTurn(() => drawn.push('next'));
  rested();
  expect(painted).toThrow('no picture');
  frame();
  painted();
  expect(drawn).toEqual(['next']);
});
