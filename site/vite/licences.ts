/**
 * Writes licences.json: every part of others that the build ships, with version, licence and its text. What of npm ends
 * in the bundle is known from the bundle; what of Go ends in the core from the list that `make` takes from the compiler.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Plugin } from 'vite';
import type { LicencedPart } from '../src/offline/parts.ts';

const site = new URL('..', import.meta.url).pathname;
const ofGo = join(site, 'src/generated/licences-go.json');

/** Packages that come with another's code inside their own file, which the bundle cannot know. */
const holding: Readonly<Record<string, readonly string[]>> = { 'd3-array': ['internmap'] };

/** Small modules that the tools write into a bundle themselves, by how their names begin. */
const written: readonly (readonly [RegExp, string])[] = [
  [/^\0vite\//, 'vite'],
  [/^\0rolldown\//, 'rolldown'],
];

/** The folder of the package that a module belongs to, or null for one of our own. */
function packageOf(module: string): string | null {
  for (const [names, writer] of written) if (names.test(module)) return join(site, 'node_modules', writer);
  const path = module.replace(/^\0/, '').split('?')[0] ?? '';
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(path)?.[0] ?? null;
}

function partOf(folder: string): LicencedPart {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
    string,
    unknown
  >;
  const file = readdirSync(folder).find((f) => /^licen[cs]e(\.(md|txt))?$/i.test(f));
  if (typeof name !== 'string' || typeof version !== 'string' || typeof license !== 'string' || !file)
    throw new Error(`${folder}: ships without a licence that can be told`);
  // Behind its own licence a package may list those of what builds and is not shipped.
  const [text = ''] = readFileSync(join(folder, file), 'utf8').split(/^# Licenses of bundled dependencies/m);
  return { name, version, licence: license, text: text.trim() };
}

/** All parts, by name; the modules are those of the bundle. */
export function partsOf(modules: Iterable<string>): LicencedPart[] {
  const folders = new Set([...modules].map(packageOf).filter((f) => f !== null));
  for (const folder of [...folders])
    for (const held of holding[basename(folder)] ?? []) folders.add(join(dirname(folder), held));
  const go = existsSync(ofGo) ? (JSON.parse(readFileSync(ofGo, 'utf8')) as LicencedPart[]) : [];
  if (go.length === 0) throw new Error(`${ofGo} is missing: run make, or make parts`);
  return [...[...folders].map(partOf), ...go].toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
}

export const licences = (): Plugin => ({
  name: 'drywright-licences',
  apply: 'build',
  generateBundle(_, bundle) {
    const modules = Object.values(bundle).flatMap((f) => (f.type === 'chunk' ? f.moduleIds : []));
    this.emitFile({ type: 'asset', fileName: 'licences.json', source: JSON.stringify(partsOf(modules)) });
  },
});
