/**
 * How the form is cut up. What a field or block is called, its unit, range, default, help and when it counts come from
 * the tables of the core; here stands only where it goes and what is folded away.
 */
import type { Block, Field } from '../generated/contract';

export type Node =
  | { kind: 'field'; template: string; field: Field }
  | { kind: 'block'; template: string; block: Block; nodes: Node[] }
  | { kind: 'list'; template: string; block: Block; nodes: Node[] }
  | { kind: 'oneOf'; template: string; block: Block; fields: Field[] };

/** The sections in the order of the work; each is one branch of the document. */
export const sections = [
  'film',
  'pile',
  'part',
  'workshop',
  'room',
  'static_oven',
  'tunnel',
  'targets',
  'tariffs',
  'costs',
  'numerics',
] as const;
export type SectionName = (typeof sections)[number];

/** Branches that are drawn as they stand, without a frame of their own. */
const transparent: ReadonlySet<string> = new Set(['film.adhesive', 'film.adhesive.sorption']);

/** What most people change in a section; the rest of that section is folded away. */
const foremost: ReadonlySet<string> = new Set([
  'film.wet_coat_kg_per_m2',
  'film.adhesive.solids_fraction',
  'pile.applied_after_s',
  'pile.length_m',
  'part.thickness_m',
  'part.back',
  'part.orientation',
  'part.length_m',
  'part.limit_temperature_K',
  'workshop.air',
  'workshop.transfer',
  'workshop.space',
  'static_oven.loaded_after_s',
  'static_oven.dwell_s',
  'static_oven.set_point_K',
  'static_oven.humidity',
  'static_oven.transfer',
  'static_oven.deadline_s',
  'tunnel.entered_after_s',
  'tunnel.line_speed_m_per_s',
  'tunnel.zones',
  'tunnel.deadline_s',
  'tunnel.coated_area_per_m_m2_per_m',
  'tunnel.zones[].name',
  'tunnel.zones[].kind',
  'tunnel.zones[].length_m',
  'tunnel.zones[].air_temperature_K',
  'tunnel.zones[].humidity',
  'tunnel.zones[].transfer',
]);

/** The same for what recurs in several sections, by the end of its path. */
const foremostEnd = /\.transfer\.(kind|coefficient_W_per_m2K|velocity_m_per_s|nozzles)$/;
const isFront = (n: Node): boolean => foremost.has(n.template) || foremostEnd.test(n.template);

/** What a closed section says of itself: the values that identify it at a glance. */
export const digest: Readonly<Record<SectionName, readonly string[]>> = {
  film: ['film.wet_coat_kg_per_m2', 'film.adhesive.solids_fraction'],
  pile: ['pile.length_m', 'pile.applied_after_s'],
  part: ['part.thickness_m', 'part.limit_temperature_K'],
  workshop: ['workshop.air[0].temperature_K', 'workshop.air[0].humidity'],
  room: ['room.deadline_s'],
  static_oven: ['static_oven.set_point_K', 'static_oven.dwell_s'],
  tunnel: ['tunnel.line_speed_m_per_s', 'tunnel.zones'],
  targets: ['targets.full_conversion', 'targets.handling_temperature_K'],
  tariffs: ['tariffs.energy_price_per_kWh', 'tariffs.carbon_kg_per_kWh'],
  costs: ['costs.wage_per_h', 'costs.days_per_year'],
  numerics: ['numerics.film_cells', 'numerics.relative_tolerance'],
};

/** Fields that are not for hands: filled by opening a file or by choosing a record. */
const hidden = (template: string): boolean => /(^|\.)(version|record)$/.test(template);

/** Builds the nodes of one section, in the order of the field table. */
export function nodesOf(fields: readonly Field[], blocks: readonly Block[], root: string): Node[] {
  const known = new Map(blocks.map((b) => [b.path, b]));
  const inside = fields.filter((f) => f.path.startsWith(`${root}.`) && !hidden(f.path));
  return gather(inside, known, root);
}

type Known = ReadonlyMap<string, Block>;

function gather(fields: readonly Field[], known: Known, base: string): Node[] {
  const nodes: Node[] = [];
  const seen = new Set<string>();
  for (const field of fields) {
    const child = childOf(field.path, base);
    if (child === field.path) {
      nodes.push({ kind: 'field', template: field.path, field });
    } else if (!seen.has(child)) {
      seen.add(child);
      nodes.push(
        ...branch(
          fields.filter((f) => f.path.startsWith(`${child}.`)),
          known,
          child,
        ),
      );
    }
  }
  return nodes;
}

function branch(own: readonly Field[], known: Known, child: string): Node[] {
  const template = child.replace(/\[\]$/, '');
  const block = known.get(template);
  if (transparent.has(template) || !block) return gather(own, known, child);
  if (block.one_of) return [{ kind: 'oneOf', template, block, fields: [...own] }];
  return [{ kind: block.list ? 'list' : 'block', template, block, nodes: gather(own, known, child) }];
}

/** The direct child of base on the way to path. */
function childOf(path: string, base: string): string {
  const dot = path.indexOf('.', base.length + 1);
  return dot < 0 ? path : path.slice(0, dot);
}

/** Splits the nodes of a section into those in view and those folded away. */
export function fold(nodes: readonly Node[]): { front: Node[]; back: Node[] } {
  if (!nodes.some(isFront)) return { front: [...nodes], back: [] };
  return { front: nodes.filter(isFront), back: nodes.filter((n) => !isFront(n)) };
}
