/**
 * Textures for the film's states, for heat and for what fails in a window: a ground and lines over it. Each differs in lightness and in texture,
 * never in hue alone. They are drawn as plain paths, because a browser prints an SVG pattern as a raster of megabytes.
 */
const svg = 'http://www.w3.org/2000/svg';

export type TextureName =
  'wet' | 'touch' | 'dry' | 'cured' | 'heated' | 'infrared' | 'cooling' | `fail${1 | 2 | 3 | 4 | 5 | 6}`;

/** The textures of what fails, in order; beyond the last they begin again. */
const failures = ['fail1', 'fail2', 'fail3', 'fail4', 'fail5', 'fail6'] as const;
export const failureOf = (k: number): TextureName => failures[k % failures.length] ?? 'fail1';

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

interface Texture {
  ground: string;
  ink: string;
  stroke: number;
  /** The lines over a ground of this size; what reaches beyond it is cut off. */
  lines(width: number, height: number): string;
}

const steps = (from: number, to: number, by: number): number[] =>
  Array.from({ length: Math.max(0, Math.ceil((to - from) / by)) }, (_, i) => from + i * by);

const waves = (width: number, height: number): string =>
  steps(4, height, 6)
    .map((y) => `M0 ${y}q3-3 6 0${'t6 0'.repeat(Math.ceil(width / 6))}`)
    .join('');
const dots = (width: number, height: number): string =>
  steps(2, height, 4)
    .flatMap((y, row) => steps(row % 2 === 0 ? 2 : 6, width, 8).map((x) => `M${x} ${y}h1.5`))
    .join('');
const slants =
  (gap: number) =>
  (width: number, height: number): string =>
    steps(-height, width, gap)
      .map((x) => `M${x} ${height}l${height}-${height}`)
      .join('');

/** Rays that fall straight down. */
const rays = (width: number, height: number): string =>
  steps(3, width, 6)
    .map((x) => `M${x} 0v${height}`)
    .join('');

const backslants =
  (gap: number) =>
  (width: number, height: number): string =>
    steps(-height, width, gap)
      .map((x) => `M${x} 0l${height} ${height}`)
      .join('');
const levels = (width: number, height: number): string =>
  steps(4, height, 7)
    .map((y) => `M0 ${y}h${width}`)
    .join('');
const wideDots = (width: number, height: number): string =>
  steps(3, height, 7)
    .flatMap((y, row) => steps(row % 2 === 0 ? 3 : 10, width, 14).map((x) => `M${x} ${y}h2.5`))
    .join('');
const wideWaves = (width: number, height: number): string =>
  steps(6, height, 10)
    .map((y) => `M0 ${y}q4-5 8 0${'t8 0'.repeat(Math.ceil(width / 8))}`)
    .join('');
const posts = (width: number, height: number): string =>
  steps(4, width, 8)
    .map((x) => `M${x} 0v${height}`)
    .join('');

const textures: Readonly<Record<TextureName, Texture>> = {
  wet: { ground: 'var(--wet)', ink: 'var(--touch)', stroke: 1, lines: waves },
  touch: { ground: 'var(--touch)', ink: 'var(--wet)', stroke: 1.5, lines: dots },
  dry: { ground: 'var(--dry)', ink: 'var(--cured)', stroke: 1, lines: slants(8) },
  cured: { ground: 'var(--cured)', ink: 'var(--dry)', stroke: 0, lines: () => '' },
  heated: { ground: 'var(--heat)', ink: 'var(--surface)', stroke: 1, lines: slants(5) },
  infrared: { ground: 'var(--heat)', ink: 'var(--surface)', stroke: 1, lines: rays },
  fail1: { ground: 'var(--bad-soft)', ink: 'var(--bad)', stroke: 0.75, lines: slants(9) },
  fail2: { ground: 'var(--care-soft)', ink: 'var(--care)', stroke: 1.5, lines: wideDots },
  fail3: { ground: 'var(--accent-soft)', ink: 'var(--accent)', stroke: 0.75, lines: levels },
  fail4: { ground: 'var(--heat-soft)', ink: 'var(--heat)', stroke: 0.75, lines: backslants(9) },
  fail5: { ground: 'var(--sunken)', ink: 'var(--muted)', stroke: 0.75, lines: wideWaves },
  fail6: { ground: 'var(--line)', ink: 'var(--muted)', stroke: 0.75, lines: posts },
  cooling: { ground: 'var(--surface)', ink: 'var(--heat)', stroke: 1, lines: slants(5) },
};

/** A box filled with a texture. */
export function filled(name: TextureName, { x, y, width, height }: Box): SVGElement {
  const { ground, ink, stroke, lines } = textures[name];
  // A nested svg cuts its content off at its own border.
  const inside = element('svg', { x, y, width, height });
  inside.append(element('rect', { width, height, fill: ground }));
  const d = lines(width, height);
  if (d) inside.append(element('path', { d, fill: 'none', stroke: ink, 'stroke-width': stroke }));
  return inside;
}

/** A box filled with a texture, inside an edge. */
export function textured(name: TextureName, box: Box, edge: string): SVGElement {
  const { x, y, width, height } = box;
  const inside = filled(name, box);
  const frame = element('rect', { x, y, width, height, fill: 'none', stroke: edge, 'stroke-width': 0.75 });
  return group([inside, frame]);
}

export function group(children: readonly SVGElement[]): SVGElement {
  const made = element('g', {});
  made.append(...children);
  return made;
}

export function element(name: string, attributes: Record<string, string | number>): SVGElement {
  const made = document.createElementNS(svg, name) as SVGElement;
  for (const [key, value] of Object.entries(attributes)) {
    made.setAttribute(key, typeof value === 'number' ? String(Number(value.toFixed(2))) : value);
  }
  return made;
}
