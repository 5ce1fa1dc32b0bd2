// Writes the types of the page's words: node scripts/words.mjs <file>. A file that is up to date is left untouched.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { languages } from '../vite/words/files.mjs';
import { typesOf } from '../vite/words/module.mjs';

const [, , file] = process.argv;
if (!file) throw new Error('Which file?');
const all = languages();
const text = typesOf(
  all[0].page,
  all.map((language) => language.tag),
);
let old = '';
try {
  old = readFileSync(file, 'utf8');
} catch {
  mkdirSync(dirname(file), { recursive: true });
}
if (old !== text) writeFileSync(file, text);
