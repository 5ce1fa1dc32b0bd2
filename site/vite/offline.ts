/** Writes the service worker, once all other files of the build lie in its folder. */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { transformWithOxc, type Plugin } from 'vite';
import { digestsOf, scriptOf } from './files.mjs';

const source = new URL('../offline/sw.ts', import.meta.url).pathname;

async function filesIn(folder: string): Promise<Map<string, Uint8Array>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter((e) => e.isFile()).map((e) => join(e.parentPath, e.name));
  return new Map(
    await Promise.all(
      paths.map(async (p) => [p.slice(folder.length + 1).replaceAll('\\', '/'), await readFile(p)] as const),
    ),
  );
}

export const offline = (): Plugin => ({
  name: 'drywright-offline',
  apply: 'build',
  async writeBundle({ dir }) {
    if (!dir) return;
    const { code } = await transformWithOxc(await readFile(source, 'utf8'), source);
    await writeFile(join(dir, 'sw.js'), scriptOf(code, digestsOf(await filesIn(dir))));
  },
});
