/** Fill patterns for the film's states and for heat. Each differs in lightness and in texture, never in hue alone. */
const svg = 'http://www.w3.org/2000/svg';

interface Texture {
  id: string;
  ground: string;
  ink: string;
  size: number;
  path: string;
  stroke: number;
}

const textures: readonly Texture[] = [
  {
    id: 'wet',
    ground: 'var(--wet)',
    ink: 'var(--touch)',
    size: 12,
    path: 'M0 4Q3 1 6 4T12 4M0 10Q3 7 6 10T12 10',
    stroke: 1,
  },
  { id: 'touch', ground: 'var(--touch)', ink: 'var(--wet)', size: 8, path: 'M2 2h1.5M6 6h1.5', stroke: 1.5 },
  {
    id: 'dry',
    ground: 'var(--dry)',
    ink: 'var(--cured)',
    size: 8,
    path: 'M-2 10L10 -2M-2 2L2 -2M6 10L10 6',
    stroke: 1,
  },
  { id: 'cured', ground: 'var(--cured)', ink: 'var(--dry)', size: 8, path: '', stroke: 0 },
  {
    id: 'heated',
    ground: 'var(--heat)',
    ink: 'var(--surface)',
    size: 6,
    path: 'M-1 7L7 -1M-1 1L1 -1M5 7L7 5',
    stroke: 1,
  },
  {
    id: 'cooling',
    ground: 'var(--surface)',
    ink: 'var(--heat)',
    size: 6,
    path: 'M-1 7L7 -1M-1 1L1 -1M5 7L7 5',
    stroke: 1,
  },
];

export type TextureName = 'wet' | 'touch' | 'dry' | 'cured' | 'heated' | 'cooling';

/** The fill of a texture inside a picture with this prefix. */
export const fillOf = (name: TextureName, prefix: string): string => `url(#${prefix}-${name})`;

/** Definitions to put into a picture; the prefix keeps two pictures on one page apart. */
export function definitions(prefix: string): SVGDefsElement {
  const defs = document.createElementNS(svg, 'defs');
  for (const t of textures) {
    const pattern = element('pattern', {
      id: `${prefix}-${t.id}`,
      width: t.size,
      height: t.size,
      patternUnits: 'userSpaceOnUse',
    });
    pattern.append(element('rect', { width: t.size, height: t.size, fill: t.ground }));
    if (t.path) {
      const stroke = { d: t.path, fill: 'none', stroke: t.ink, 'stroke-width': t.stroke };
      pattern.append(element('path', stroke));
    }
    defs.append(pattern);
  }
  return defs;
}

function element(name: string, attributes: Record<string, string | number>): SVGElement {
  const made = document.createElementNS(svg, name) as SVGElement;
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}
