// Compares answers of different builds of the core; see cure/api/requests_test.go for where the bounds come from.

/** Whether native code rounds here as WebAssembly does. */
const alikeHere = process.arch === 'x64';
/** How far a number may lie off, of itself: where compilers round otherwise the core chooses other steps now and then. */
export const closeness = alikeHere ? 1e-9 : 2e-5;
/** What sums that cancel may leave: numbers; an account of heat [J]; a window, which is drawn to less than the rest. */
const rests = alikeHere ? { plain: 1e-12, heat: 1e-12, window: 1e-12 } : { plain: 1e-9, heat: 1e-6, window: 1e-3 };

/**
 * Where two documents differ, beyond what rounding explains; empty: nowhere. The largest difference of two numbers that passed is
 * kept in seen, as a share of the larger one, leaving out what cancelling sums leave.
 */
export function unlike(want, got, seen = { largest: 0 }, path = '', rest = rests.plain) {
  if (typeof want === 'number' && typeof got === 'number') {
    const off = Math.abs(want - got);
    if (off > closeness * Math.abs(want) + rest) return `${path}: ${got} instead of ${want}`;
    if (off > rest && off / Math.abs(want) > seen.largest) Object.assign(seen, { largest: off / Math.abs(want), path });
    return '';
  }
  if (want === null || got === null || typeof want !== 'object' || typeof got !== 'object')
    return want === got ? '' : `${path}: ${JSON.stringify(got)} instead of ${JSON.stringify(want)}`;
  const [a, b] = [Object.keys(want).sort(), Object.keys(got).sort()];
  if (a.join() !== b.join() || Array.isArray(want) !== Array.isArray(got)) return `${path}: has ${b} instead of ${a}`;
  for (const key of a) {
    const within = key.includes('_J') ? rests.heat : key === 'window' ? rests.window : rest;
    const where = unlike(want[key], got[key], seen, `${path}.${key}`, within);
    if (where) return where;
  }
  return '';
}
