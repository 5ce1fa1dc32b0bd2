/**
 * Drawing takes tens of milliseconds a picture, and a new answer redraws them all. They take turns, one a frame, so
 * that a key pressed meanwhile is not kept waiting; and while somebody types they leave the processors to the answers.
 */
const waiting = new Set<() => void>();
let running = false;

/** How long after a key no picture is drawn [ms]: as long as the next key usually takes. */
const rest = 150;
/** How long keys that follow each other closer may hold pictures up [ms]: who keeps a key down wants to see them move. */
const patience = 600;
let firstKey = -Infinity;
let lastKey = -Infinity;
const heard = (): void => {
  const now = performance.now();
  if (now - lastKey > rest) firstKey = now;
  lastKey = now;
};
globalThis.addEventListener?.('input', heard, { capture: true, passive: true });

/** Asks for a turn; the function returned gives it up again. */
export function takeTurn(draw: () => void): () => void {
  waiting.add(draw);
  if (!running) {
    running = true;
    // Not behind the frame that comes next: what asks for pictures has mostly just changed the words of the answer, and they go first.
    requestAnimationFrame(() => requestAnimationFrame(next));
  }
  return () => waiting.delete(draw);
}

function next(): void {
  if (waiting.size === 0) {
    running = false;
    return;
  }
  const early = Math.min(lastKey + rest, firstKey + patience) - performance.now();
  if (early > 0) {
    setTimeout(() => requestAnimationFrame(next), early);
    return;
  }
  // After the frame is painted, not before it; and the next one a frame later. Whose turn it is is said only then: one that was
  // given up meanwhile belongs to a picture that is gone.
  setTimeout(() => {
    const [draw] = waiting;
    try {
      if (draw) {
        waiting.delete(draw);
        draw();
      }
    } finally {
      requestAnimationFrame(next);
    }
  });
}

/** Calls back whenever the element is in view or nearly so; the function returned stops it. */
export function whenNear(element: Element, near: (is: boolean) => void): () => void {
  const watch = new IntersectionObserver((entries) => near(entries.some((e) => e.isIntersecting)), {
    rootMargin: '400px',
  });
  watch.observe(element);
  return () => watch.disconnect();
}
