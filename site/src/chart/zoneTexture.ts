/** How zones are told apart without colour: ground and lines differ for hot air, radiators and cooling air. */
import type { ZoneKind } from './tunnel';

interface Texture {
  ground: string;
  ink: string;
  /** The lines over a ground of this size; what reaches beyond it is cut off. */
  lines(width: number, height: number): string;
}

const steps = (from: number, to: number, by: number): number[] =>
  Array.from({ length: Math.max(0, Math.ceil((to - from) / by)) }, (_, i) => from + i * by);
const slants = (width: number, height: number): string =>
  steps(-height, width, 5)
    .map((x) => `M${x} ${height}l${height}-${height}`)
    .join('');
/** Rays that fall straight down. */
const rays = (width: number, height: number): string =>
  steps(3, width, 6)
    .map((x) => `M${x} 0v${height}`)
    .join('');

export const zoneTextures: Readonly<Record<ZoneKind, Texture>> = {
  heated: { ground: 'var(--heat)', ink: 'var(--surface)', lines: slants },
  infrared: { ground: 'var(--heat)', ink: 'var(--surface)', lines: rays },
  cooling: { ground: 'var(--surface)', ink: 'var(--heat)', lines: slants },
};
