/** Puts a name beside each line of a picture, where it is farthest from all lines and names. */
export interface Pixel {
  x: number;
  y: number;
}

export interface Named {
  name: string;
  width: number;
  points: readonly Pixel[];
}

export interface NamePlace extends Pixel {
  name: string;
}

export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** From the middle of a word to its line. */
const off = 11;
const halfHeight = 7;
/** Lines that are nearer than this cannot be told apart by a name beside them [px]. */
const tellable = 5;
/** More room than this makes no name easier to read. */
const enough = 16;

/** Names with less room than `least` [px] to the nearest line or name are left out, and those whose line never runs apart from the others. */
export function placeNames(lines: readonly Named[], frame: Frame, least = -Infinity): NamePlace[] {
  const placed: (NamePlace & { width: number })[] = [];
  for (const line of lines) {
    let best: NamePlace | null = null;
    let most = -Infinity;
    for (const candidate of candidatesOf(line, frame)) {
      const room = Math.min(roomAmongLines(candidate, line.width, lines), roomAmongNames(candidate, placed));
      if (room < least || (Number.isFinite(least) && apart(line, candidate.x, lines) < tellable)) continue;
      // Where the lines run apart it is plain which one is meant. Of equally good places the later one.
      const plain = room > 2 ? Math.min(apart(line, candidate.x, lines), enough) / 2 : 0;
      const worth = Math.min(room, enough) + plain;
      if (worth >= most) [best, most] = [candidate, worth];
    }
    if (best) placed.push({ ...best, width: line.width });
  }
  return placed.map(({ name, x, y }) => ({ name, x, y }));

  function roomAmongNames(at: NamePlace, names: readonly (NamePlace & { width: number })[]): number {
    const width = lines.find((l) => l.name === at.name)?.width ?? 0;
    const near = names.filter((n) => Math.abs(n.x - at.x) < (n.width + width) / 2 + 6);
    return Math.min(Infinity, ...near.map((n) => Math.abs(n.y - at.y) - 2 * halfHeight));
  }
}

function candidatesOf({ name, width, points }: Named, { left, right, top, bottom }: Frame): NamePlace[] {
  const [from, to] = [left + width / 2 + 4, right - width / 2 - 4];
  return Array.from({ length: 33 }, (_, i) => from + ((to - from) * i) / 32)
    .flatMap((x) => [-off, off].map((dy) => ({ name, x, y: heightAt(points, x) + dy })))
    .filter(({ y }) => y - halfHeight >= top && y + halfHeight <= bottom);
}

function roomAmongLines({ x, y }: Pixel, width: number, lines: readonly Named[]): number {
  const across = Array.from({ length: 7 }, (_, i) => x + (width * (i - 3)) / 6);
  return Math.min(
    ...lines.flatMap((l) => across.map((at) => Math.abs(heightAt(l.points, at) - y) - halfHeight)),
  );
}

/** How far the nearest other line runs from this one. */
function apart(line: Named, x: number, lines: readonly Named[]): number {
  const own = heightAt(line.points, x);
  return Math.min(...lines.filter((l) => l !== line).map((l) => Math.abs(heightAt(l.points, x) - own)));
}

export function heightAt(points: readonly Pixel[], x: number): number {
  const next = points.findIndex((p) => p.x > x);
  const [a, b] = [points[next - 1], points[next]];
  if (next < 0) return points.at(-1)?.y ?? NaN;
  if (!a || !b) return points[0]?.y ?? NaN;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
