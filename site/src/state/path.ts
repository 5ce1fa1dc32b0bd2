/**
 * Paths into the job document, written as the core writes them in its faults: `tunnel.zones[1].length_m`.
 * A template has empty brackets instead of indices, `tunnel.zones[].length_m`, and names one line of the field table.
 */
export type Segment = string | number;

export function parsePath(path: string): Segment[] {
  const segments: Segment[] = [];
  for (const part of path.split('.')) {
    const match = /^([^[\]]*)((?:\[\d+\])*)$/.exec(part);
    if (!match) return [path];
    if (match[1]) segments.push(match[1]);
    for (const index of match[2]?.matchAll(/\[(\d+)\]/g) ?? []) segments.push(Number(index[1]));
  }
  return segments;
}

export function formatPath(segments: readonly Segment[]): string {
  return segments.reduce<string>(
    (text, s) => (typeof s === 'number' ? `${text}[${s}]` : text === '' ? s : `${text}.${s}`),
    '',
  );
}

/** The line of the field table that a path belongs to. */
export const templateOf = (path: string): string => path.replace(/\[\d+\]/g, '[]');

/** Fills the first empty brackets of a template with an index: `zones[].length_m`, 2 → `zones[2].length_m`. */
export const atIndex = (template: string, index: number): string => template.replace('[]', `[${index}]`);

/** The last name of a path: what its parent calls it. */
export const nameOf = (path: string): string => path.slice(path.lastIndexOf('.') + 1);

/** Whether path is the block itself or lies inside it. */
export function isWithin(path: string, block: string): boolean {
  return block === '' || path === block || path.startsWith(`${block}.`) || path.startsWith(`${block}[`);
}

/** A copy without reactivity. Svelte's own takes ten times as long, since it hands every number to structuredClone. */
export function plain<T>(node: T): T {
  if (node === null || typeof node !== 'object') return node;
  if (Array.isArray(node)) return node.map(plain) as T;
  return Object.fromEntries(
    Object.entries(node).map(([name, value]) => [name, plain(value as unknown)]),
  ) as T;
}

export function getAt(document: unknown, path: string): unknown {
  let node = document;
  for (const segment of parsePath(path)) {
    if (node === null || typeof node !== 'object') return undefined;
    node = (node as Record<Segment, unknown>)[segment];
  }
  return node;
}

/** Sets a value in place. A parent that is absent is left alone: a field of a block that is switched off has no home. */
export function setAt(document: unknown, path: string, value: unknown): boolean {
  const segments = parsePath(path);
  const last = segments.pop();
  const parent = getAt(document, formatPath(segments));
  if (last === undefined || parent === null || typeof parent !== 'object') return false;
  (parent as Record<Segment, unknown>)[last] = value;
  return true;
}

/**
 * Follows a change of order in a list. Keys below `list[i]` move to `list[to(i)]`, or vanish where `to` gives null.
 * Everything kept beside the document under a path (what was typed, what is wrong) goes through here.
 */
export function movePaths<T>(
  entries: Iterable<[string, T]>,
  list: string,
  to: (index: number) => number | null,
): [string, T][] {
  const moved: [string, T][] = [];
  for (const [path, value] of entries) {
    const match = path.startsWith(`${list}[`) ? /^\[(\d+)\](.*)$/.exec(path.slice(list.length)) : null;
    if (!match) {
      moved.push([path, value]);
      continue;
    }
    const index = to(Number(match[1]));
    if (index !== null) moved.push([`${list}[${index}]${match[2] ?? ''}`, value]);
  }
  return moved;
}
