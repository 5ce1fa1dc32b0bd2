import { expect, test } from 'vitest';
import {
  atIndex,
  formatPath,
  getAt,
  isWithin,
  movePaths,
  parsePath,
  setAt,
  templateOf,
} from '../../src/state/path';

const path = 'tunnel.zones[1].humidity.dew_point_K';

test('a path in the words of the core is read and written', () => {
  expect(parsePath(path)).toEqual(['tunnel', 'zones', 1, 'humidity', 'dew_point_K']);
  expect(formatPath(parsePath(path))).toBe(path);
  expect(templateOf(path)).toBe('tunnel.zones[].humidity.dew_point_K');
  expect(atIndex(templateOf(path), 1)).toBe(path);
});

test('values are found and set; a block that is switched off has no fields', () => {
  const job = { tunnel: { zones: [{}, { humidity: { dew_point_K: 290 } }] }, room: null };
  expect(getAt(job, path)).toBe(290);
  expect(setAt(job, path, 300)).toBe(true);
  expect(getAt(job, path)).toBe(300);
  expect(setAt(job, 'room.deadline_s', 1)).toBe(false);
  expect(getAt(job, 'room.deadline_s')).toBeUndefined();
  expect(getAt(job, 'tunnel.zones[7].name')).toBeUndefined();
});

test('a block holds its own paths and not those of a namesake', () => {
  expect(isWithin('tunnel.zones[1].name', 'tunnel')).toBe(true);
  expect(isWithin('tunnel.zones[1].name', 'tunnel.zones')).toBe(true);
  expect(isWithin('tunnel', 'tunnel')).toBe(true);
  expect(isWithin('tunnel_two.name', 'tunnel')).toBe(false);
});

test('what is kept beside a list follows its entries', () => {
  const kept: [string, string][] = [
    ['tunnel.zones[0].name', 'a'],
    ['tunnel.zones[2].name', 'c'],
    ['film.wet', 'x'],
  ];
  const removed = movePaths(kept, 'tunnel.zones', (i) => (i === 0 ? null : i - 1));
  expect(removed).toEqual([
    ['tunnel.zones[1].name', 'c'],
    ['film.wet', 'x'],
  ]);
});
