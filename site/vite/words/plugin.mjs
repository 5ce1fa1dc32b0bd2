/**
 * Makes the page's part of the language files into modules while the page is built: virtual:words lists the languages,
 * virtual:words/<tag>-<part> holds one part of one language.
 */
import { fileURLToPath } from 'node:url';
import { folder, languages } from './files.mjs';
import { listOf, moduleOf } from './module.mjs';

const prefix = 'virtual:words';
const runtime = fileURLToPath(new URL('../../src/text/say.ts', import.meta.url));

/** @returns {import('vite').Plugin} */
export function words() {
  return {
    name: 'drywright-words',
    resolveId: (id) => (id.startsWith(prefix) ? `\0${id}` : null),
    load(id) {
      if (!id.startsWith(`\0${prefix}`)) return null;
      const [, tag, part] = /\/(.+)-(\w+)$/.exec(id) ?? [];
      const all = languages();
      for (const { tag: name } of all) this.addWatchFile(`${folder}${name}.json`);
      if (!tag || !part) return listOf(all);
      const messages = all.find((language) => language.tag === tag)?.page[part];
      return messages === undefined ? null : moduleOf(messages, runtime);
    },
  };
}
