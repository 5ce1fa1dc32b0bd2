// Measures how the answer follows typing: the time from a key to the painted answer, and the longest task that keeps the
// page from hearing the next key. Prints what is wanted of a machine with two processors beside it; no test, since it judges
// a machine as much as the page. Run by `make typing`.
import { openPage } from './browser.mjs';
import { serve } from './command.mjs';
import { control } from './screen.mjs';

const edits = 30;
const coat = control('film.wet_coat_kg_per_m2');
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** Watches, inside the page, long tasks and the way from an input to its answer. */
function install() {
  const seen = { tasks: [], answers: [] };
  // A message is heard right after the frame; a timer would wait for the first picture, which is drawn behind the answer.
  const painted = (then) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(null);
  };
  let asked = null;
  let told = null;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.tasks.push(entry.duration);
  }).observe({ type: 'longtask' });
  addEventListener('input', (event) => (asked = { value: event.target.value, since: performance.now() }), true);
  // The word beside the heading tells when the answers belong to the inputs again.
  const phase = document.querySelector('.phase');
  new MutationObserver(() => {
    if (phase.textContent.trim() !== 'Up to date' || !asked) return;
    const { value, since } = asked;
    asked = null;
    requestAnimationFrame(() =>
      painted(() => {
        seen.answers.push({ value, wait: performance.now() - since });
        told?.();
      }),
    );
  }).observe(phase, { childList: true, characterData: true, subtree: true });
  // Asked once and not again and again: the processors belong to what is measured.
  seen.answered = (value, ms) =>
    new Promise((resolve, reject) => {
      setTimeout(() => reject(new Error(`no answer to ${value}`)), ms);
      told = () => seen.answers.at(-1)?.value === value && resolve();
      told();
    });
  globalThis.seen = seen;
}

/** Makes the edits and says the waits and tasks that they caused [ms]. keys: milliseconds between the keys of an edit. */
async function measure(page, keys) {
  await page.evaluate(() => Object.assign(globalThis.seen, { tasks: [], answers: [] }));
  for (let i = 0; i < edits; i++) {
    await page.click(coat, { count: 3 });
    const value = `${130 + ((i * 37) % 90)}.5`; // long enough that keys fall into a run and overtake it
    if (keys === null) await page.keyboard.sendCharacter(value);
    else await page.keyboard.type(value, { delay: keys });
    await page.evaluate((v) => globalThis.seen.answered(v, 30_000), value);
    await pause(600); // the pictures are drawn after the answer
  }
  return page.evaluate(() => ({ tasks: globalThis.seen.tasks, waits: globalThis.seen.answers.map((a) => a.wait) }));
}

/** The value below which a share of the numbers lies (nearest rank). */
function quantile(numbers, share) {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}

const server = await serve();
const view = await openPage(server.address);
try {
  // So tall that every picture is in view and has to be drawn again.
  await view.page.setViewport({ width: 1440, height: 3600 });
  await view.page.waitForSelector('[role=tab]');
  await view.page.waitForSelector(coat); // the fields come behind the heads of the form
  await pause(2000); // the first pictures, and the engine's second compilation of the core
  await view.page.evaluate(install);
  console.log(`${'[ms]'.padEnd(22)}${'median'.padStart(9)}${'95 %'.padStart(9)}${'longest task'.padStart(15)}${'answers'.padStart(9)}`);
  console.log(`${'wanted'.padEnd(22)}${'< 100'.padStart(9)}${'< 200'.padStart(9)}${'< 50'.padStart(15)}`);
  for (const [name, keys] of [
    ['whole value at once', null],
    ['typed, 90 ms a key', 90],
  ]) {
    const { waits, tasks } = await measure(view.page, keys);
    const [median, slow] = [quantile(waits, 0.5), quantile(waits, 0.95)].map((ms) => String(Math.round(ms)));
    // The browser tells of tasks from 50 ms on only.
    const longest = tasks.length > 0 ? `${Math.round(Math.max(...tasks))} (${tasks.length})` : '< 50';
    console.log(`${name.padEnd(22)}${median.padStart(9)}${slow.padStart(9)}${longest.padStart(15)}${String(waits.length).padStart(9)}`);
  }
} finally {
  await view.close();
  await server.stop();
}
