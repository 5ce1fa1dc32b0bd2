/**
 * Lays a document over the defaults of the core's tables, so that the form can hold whatever a file holds: what the
 * document leaves out takes its default, a value of the wrong type becomes a text at its field, to be mended there, and
 * what the tables do not know is left out and listed. Values are not judged here; that is the core's.
 */
import type { Block, Field } from '../generated/contract';
import { nameOf } from './path';
import type { Slipped } from './slips';

export interface Laid {
  value: Record<string, unknown>;
  slips: Slipped[];
  /** Paths in the document of what has no place in the form. */
  left: string[];
}

export interface Tables {
  readonly fields: readonly Field[];
  readonly blocks: readonly Block[];
}

type Bag = Record<string, unknown>;
export const isBag = (value: unknown): value is Bag =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value that a fresh field holds. */
export function defaultOf(field: Field): number | string | boolean | null {
  if (field.absent) return null;
  if (field.kind === 'number') return field.default;
  return field.kind === 'switch' ? field.default_on : field.default_text;
}

/** A fresh block or list item made of the defaults, for whatever is switched on or added. */
export const freshBlock = (tables: Tables, template: string): Bag => lay(tables, template, {}).value;

/** Lays `given` over the block of the template; the template of the whole job is the empty text. */
export function lay(tables: Tables, template: string, given: Bag): Laid {
  const slips: Slipped[] = [];
  const left: string[] = [];
  return { value: block(template, template, given, false), slips, left };

  function block(at: string, path: string, held: Bag, oneOf: boolean): Bag {
    const made: Bag = {};
    for (const field of tables.fields.filter((f) => isChild(f.path, at))) {
      const name = nameOf(field.path);
      // Of a one-of block one is given; the default of another must not stand beside it.
      const missing = oneOf ? null : defaultOf(field);
      made[name] = Object.hasOwn(held, name) ? value(field, under(path, name), held[name]) : missing;
    }
    for (const one of tables.blocks.filter((b) => isChild(b.path, at) && !b.path.endsWith('[]'))) {
      const name = nameOf(one.path);
      made[name] = branch(one, under(path, name), Object.hasOwn(held, name) ? held[name] : undefined);
    }
    left.push(...Object.keys(held).flatMap((name) => (Object.hasOwn(made, name) ? [] : [under(path, name)])));
    return made;
  }

  function branch(one: Block, path: string, held: unknown): unknown {
    if (one.list) return list(one, path, held);
    if (isBag(held)) return block(one.path, path, held, one.one_of);
    if (held === null && one.optional) return null;
    if (held !== undefined) left.push(path);
    return one.absent ? null : block(one.path, path, {}, false);
  }

  function list(one: Block, path: string, held: unknown): Bag[] {
    if (held !== undefined && !Array.isArray(held)) left.push(path);
    const items: unknown[] = Array.isArray(held) ? held : Array.from({ length: one.items }, () => ({}));
    return items.flatMap((item, i) => {
      const at = `${path}[${i}]`;
      if (isBag(item) && i < one.max_items) return [block(`${one.path}[]`, at, item, false)];
      left.push(at);
      return [];
    });
  }

  function value(field: Field, path: string, held: unknown): unknown {
    if (field.kind === 'number') return number(field, path, held);
    if (typeof held === (field.kind === 'switch' ? 'boolean' : 'string')) return held;
    left.push(path);
    return defaultOf(field);
  }

  function number(field: Field, path: string, held: unknown): number | null {
    if (typeof held === 'number' && Number.isFinite(held)) return held;
    if (held === null && field.optional) return null;
    // Never taken for a number, even where it reads like one: nobody knows its unit.
    if (held === null) slips.push({ path, text: '', slip: 'missing' });
    else slips.push({ path, text: wordsOf(held), slip: 'foreign' });
    return field.default;
  }
}

const isChild = (path: string, parent: string): boolean => {
  const depth = parent === '' ? 0 : parent.length + 1;
  return (
    path !== '' && path.startsWith(parent === '' ? '' : `${parent}.`) && !path.slice(depth).includes('.')
  );
};
const under = (path: string, name: string): string => (path === '' ? name : `${path}.${name}`);
const wordsOf = (held: unknown): string =>
  (typeof held === 'object' ? JSON.stringify(held) : String(held)).slice(0, 60);
