import { afterEach, beforeEach, expect, test, vi } from 'vitest';

let frames: FrameRequestCallback[] = [];
let key: () => void = () => undefined;

beforeEach(() => {
  vi.useFakeTimers();
  vi.resetModules();
  frames = [];
  vi.stubGlobal('requestAnimationFrame', (f: FrameRequestCallback) => frames.push(f));
  vi.stubGlobal('addEventListener', (_: string, heard: () => void) => (key = heard));
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

/** Lets time go on, with a frame every 10 ms, and says after how long the first picture was drawn [ms]. */
const firstAfter = (drawn: string[], every: number): number => {
  const begun = performance.now();
  while (drawn.length === 0 && performance.now() - begun < 2000) {
    if (every > 0 && (performance.now() - begun) % every === 0) key();
    frame();
    vi.advanceTimersByTime(10);
  }
  return performance.now() - begun;
};

test('pictures wait for a rest between keys, but not for ever', async () => {
  const { takeTurn } = await import('../../src/chart/turns');
  const ask = (): string[] => {
    const drawn: string[] = [];
    takeTurn(() => drawn.push('drawn'));
    return drawn;
  };
  expect(firstAfter(ask(), 0)).toBeLessThan(50);
  key();
  const alone = firstAfter(ask(), 0);
  expect(alone).toBeGreaterThanOrEqual(150);
  expect(alone).toBeLessThan(220);
  const hurried = firstAfter(ask(), 90);
  expect(hurried).toBeGreaterThanOrEqual(600);
  expect(hurried).toBeLessThan(700);
  // A key every 300 ms leaves room between them.
  expect(firstAfter(ask(), 300)).toBeLessThan(220);
});
