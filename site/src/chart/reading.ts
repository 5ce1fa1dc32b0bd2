/** Reading a picture off: the places that a cursor can stop at, what is read there, and the way from one to the next. */
import type { Frame, Pixel } from './beside';
import type { Sign } from './signs';

export interface Reading {
  /** Where it is read: a time, a quantity, a place. */
  where: string;
  values: readonly { name: string; value: string; sign?: Sign }[];
}

/** Where the cursor stands for one stop, and the points of the picture that belong to it. */
export interface Place extends Pixel {
  dots: readonly Pixel[];
}

/** A picture as it was drawn. */
export interface Drawn {
  svg: SVGElement;
  frame: Frame;
  /** Of the stops, in their order; empty where there is nothing to read off. */
  places: readonly Place[];
}

/** Which way stops follow each other: from left to right, from bottom to top, or anywhere. */
export type Across = 'x' | 'y' | 'plane';

/** A reading in one breath. */
export const spoken = ({ where, values }: Reading): string =>
  [where, ...values.map((v) => [v.name, v.value].filter(Boolean).join(' '))].filter(Boolean).join(', ');

/** The stop that is nearest to a pointer; -1 where there is none. */
export function nearest(places: readonly Place[], at: Pixel, across: Across): number {
  let best = -1;
  let least = Infinity;
  for (const [i, p] of places.entries()) {
    const candidates = across === 'plane' && p.dots.length > 0 ? p.dots : [p];
    for (const c of candidates) {
      const [dx, dy] = [across === 'y' ? 0 : c.x - at.x, across === 'x' ? 0 : c.y - at.y];
      const far = dx * dx + dy * dy;
      if (far < least) [best, least] = [i, far];
    }
  }
  return best;
}

/**
 * The stop that a key leads to, or null for other keys. Arrows go one stop on, or in a lattice with `columns` up and down a whole
 * row; page keys a tenth of the way; Home and End to the ends.
 */
export function stepBy(key: string, at: number, count: number, columns: number | null = null): number | null {
  const far = Math.max(1, Math.round((columns ?? count) / 10)) * (columns ?? 1);
  const up = columns ?? 1;
  const to: Partial<Record<string, number>> = {
    ArrowRight: at + 1,
    ArrowLeft: at - 1,
    ArrowUp: at + up,
    ArrowDown: at - up,
    PageUp: at + far,
    PageDown: at - far,
    Home: columns ? at - (at % columns) : 0,
    End: columns ? at - (at % columns) + columns - 1 : count - 1,
  };
  const wanted = to[key];
  if (wanted === undefined) return null;
  if (!columns) return Math.min(count - 1, Math.max(0, wanted));
  // A lattice has rows: sideways the cursor stays in its own, up and down in its column.
  const sideways = key === 'ArrowRight' || key === 'ArrowLeft';
  const inside = wanted >= 0 && wanted < count;
  if (sideways) return inside && Math.floor(wanted / columns) === Math.floor(at / columns) ? wanted : at;
  if (inside) return wanted;
  const column = at % columns;
  return wanted < 0 ? column : count - columns + column;
}
