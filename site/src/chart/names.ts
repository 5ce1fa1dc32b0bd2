/** Writes names beside the lines of a picture, each in its line's colour, where there is room for them; the key holds them all anyway. */
import { heightAt, placeNames, type Frame, type Pixel } from './beside';
import { colourOf } from './lines';
import { textWidth } from './measure';
import { element, group } from './textures';

const font = 11.5;
/** Heights along a line that its name is judged by: more make no better place. */
const samples = 72;

export interface NamedLine {
  name: string;
  style: number;
  points: readonly Pixel[];
}

export function lineNames(lines: readonly NamedLine[], frame: Frame): SVGElement {
  const inside = lines.filter((l) => l.points.length > 1);
  const named = inside.map((l) => ({
    name: l.name,
    width: textWidth(l.name, font, 600),
    points: Array.from({ length: samples + 1 }, (_, i) => {
      const x = frame.left + ((frame.right - frame.left) * i) / samples;
      return { x, y: heightAt(l.points, x) };
    }),
  }));
  const styles = new Map(inside.map((l) => [l.name, l.style]));
  return group(
    placeNames(named, frame, -2).map(({ name, x, y }) => {
      const made = element('text', {
        x,
        y: y + 4,
        'text-anchor': 'middle',
        'font-size': font,
        'font-weight': 600,
        fill: colourOf(styles.get(name) ?? 1),
        stroke: 'var(--surface)',
        'stroke-width': 4,
        'stroke-linejoin': 'round',
        'paint-order': 'stroke',
      });
      made.textContent = name;
      return made;
    }),
  );
}
