/**
 * Places labels over (or under) points on a line so that none covers another and no stem runs through a word. Labels
 * fly like flags to the right of their stem; of two that would collide the left one goes higher. Near the right edge a
 * flag flies to the left instead.
 */
export interface Flag {
  x: number;
  width: number;
}

export interface Placed {
  row: number;
  side: 'right' | 'left';
}

export function placeFlags(flags: readonly Flag[], rightEdge: number, gap = 6): Placed[] {
  const order = flags.map((_, i) => i).sort((a, b) => at(flags, b).x - at(flags, a).x || b - a);
  const placed: Placed[] = flags.map(() => ({ row: 0, side: 'right' }));
  const done: { from: number; to: number; x: number; row: number }[] = [];
  const settle = (i: number, side: Placed['side']): void => {
    const { x, width } = at(flags, i);
    const [from, to] = side === 'right' ? [x, x + width + gap] : [x - width - gap, x];
    const row = done.reduce(
      (r, d) => ((d.from < to && d.to > from) || (d.x >= from && d.x <= to) ? Math.max(r, d.row + 1) : r),
      0,
    );
    done.push({ from, to, x, row });
    placed[i] = { row, side };
  };
  const fits = (i: number): boolean => at(flags, i).x + at(flags, i).width <= rightEdge;
  for (const i of order) if (fits(i)) settle(i, 'right');
  // Flags that fly left stand above everything they pass, nearest stem first.
  for (const i of order.toReversed()) if (!fits(i)) settle(i, 'left');
  return placed;
}

export const rowsOf = (placed: readonly Placed[]): number =>
  placed.reduce((rows, p) => Math.max(rows, p.row + 1), 0);

function at(flags: readonly Flag[], i: number): Flag {
  const flag = flags[i];
  if (!flag) throw new RangeError(`no flag ${i}`);
  return flag;
}
