/** The language files, where they lie and what is in them. English comes first: it has every key. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const folder = fileURLToPath(new URL('../../../cure/words/languages/', import.meta.url));

/**
 * @typedef {{ tag: string, name: string, decimal_mark: string, core: { unit?: Record<string, string>, grammar?: { label_inside_a_sentence?: string } }, page: Record<string, import('./module.mjs').Messages> }} Language
 * @returns {Language[]}
 */
export function languages() {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  const all = names.map((name) => /** @type {Language} */ (JSON.parse(readFileSync(folder + name, 'utf8'))));
  const written = all.filter(({ page }) => Object.keys(page).length > 0);
  return written.sort(
    (a, b) => Number(b.tag === 'en') - Number(a.tag === 'en') || a.tag.localeCompare(b.tag),
  );
}
