import { describe, expect, test } from 'vitest';
import { fold, nodesOf, type Node } from '../../src/form/layout';
import { blocks, field, fields } from '../fixtures/tables';

const shape = (nodes: readonly Node[]): unknown[] =>
  nodes.map((n) => ('nodes' in n ? [n.kind, n.template, shape(n.nodes)] : [n.kind, n.template]));

describe('the form', () => {
  test('is cut up by the tables: fields, blocks, lists, one-of blocks', () => {
    expect(shape(nodesOf(fields, blocks, 'tunnel'))).toEqual([
      ['field', 'tunnel.line_speed_m_per_s'],
      [
        'list',
        'tunnel.zones',
        [
          ['field', 'tunnel.zones[].name'],
          ['field', 'tunnel.zones[].length_m'],
          ['field', 'tunnel.zones[].air_temperature_K'],
          ['oneOf', 'tunnel.zones[].humidity'],
          ['field', 'tunnel.zones[].wall_temperature_K'],
        ],
      ],
    ]);
  });

  test('shows every field of the table once, and a record not at all', () => {
    const leaves = (nodes: readonly Node[]): string[] =>
      nodes.flatMap((n) =>
        'nodes' in n ? leaves(n.nodes) : n.kind === 'oneOf' ? n.fields.map((f) => f.path) : [n.template],
      );
    const shown = ['film', 'tunnel', 'numerics'].flatMap((s) => leaves(nodesOf(fields, blocks, s)));
    const wanted = fields.map((f) => f.path).filter((p) => p !== 'version' && !p.endsWith('.record'));
    expect(shown.toSorted()).toEqual(wanted.toSorted());
  });

  test('a field that a later core adds finds its place', () => {
    const more = [...fields, field('tunnel.exhaust_m3_per_s')];
    expect(shape(nodesOf(more, blocks, 'tunnel'))).toContainEqual(['field', 'tunnel.exhaust_m3_per_s']);
  });

  test('folds away what few people change, and nothing twice', () => {
    const nodes = nodesOf(fields, blocks, 'film');
    const { front, back } = fold(nodes);
    expect(front.map((n) => n.template)).toEqual([
      'film.wet_coat_kg_per_m2',
      'film.adhesive.solids_fraction',
    ]);
    expect(front.length + back.length).toBe(nodes.length);
    expect(fold(nodesOf(fields, blocks, 'numerics')).back).toEqual([]);
  });
});
