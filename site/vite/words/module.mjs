/** Parts of language files as ES modules, and the types that the parts of all languages have. */
import { argumentsOf, compile, parse } from './message.mjs';

/** @typedef {string | { [key: string]: Messages }} Messages */

/**
 * @param {Messages} messages
 * @returns {string}
 */
function literal(messages) {
  if (typeof messages === 'string') return compile(messages);
  const members = Object.entries(messages).map(([key, inner]) => `${JSON.stringify(key)}:${literal(inner)}`);
  return `{${members.join(',')}}`;
}

/**
 * The module of one part of one language.
 * @param {Messages} messages
 * @param {string} runtime where `say` and `choose` come from
 */
export function moduleOf(messages, runtime) {
  const body = literal(messages);
  const used = ['say', 'choose'].filter((name) => body.includes(`${name}(`));
  const head = used.length > 0 ? `import {${used.join(',')}} from ${JSON.stringify(runtime)};\n` : '';
  return `${head}export default ${body};\n`;
}

/**
 * The signs of a language for times, where they are not those of SI.
 * @param {Record<string, string> | undefined} signs
 */
const ownSigns = (signs = {}) => {
  const own = Object.entries(signs).filter(([name, sign]) => sign !== name);
  return own.length > 0 ? Object.fromEntries(own) : undefined;
};

/**
 * The module that lists the languages, each with a way to fetch each of its parts.
 * @param {import('./files.mjs').Language[]} languages
 */
export function listOf(languages) {
  const rows = languages.map(({ tag, name, decimal_mark, core, page }) => {
    const parts = Object.keys(page).map(
      (part) => `${JSON.stringify(part)}:()=>import(${JSON.stringify(`virtual:words/${tag}-${part}`)})`,
    );
    const lower = core.grammar?.label_inside_a_sentence === 'lower';
    const facts = JSON.stringify({
      name,
      mark: decimal_mark,
      lower,
      times: ownSigns(core.unit),
    }).slice(1, -1);
    return `${JSON.stringify(tag)}:{${facts},parts:{${parts.join(',')}}}`;
  });
  return `export default {${rows.join(',')}};\n`;
}

/**
 * @param {Messages} messages
 * @param {string} indent
 * @returns {string}
 */
function typeOf(messages, indent) {
  if (typeof messages === 'string') {
    const args = [...argumentsOf(parse(messages))];
    if (args.length === 0) return 'string';
    const members = args.map(
      ([name, kind]) => `${name}: ${kind === 'number' ? 'number' : 'string | number'}`,
    );
    return `(a: { ${members.join('; ')} }) => string`;
  }
  const members = Object.entries(messages).map(([key, inner]) => {
    const name = /^[A-Za-z_]\w*$/.test(key) ? key : JSON.stringify(key);
    return `${indent}  ${name}: ${typeOf(inner, `${indent}  `)};\n`;
  });
  return `{\n${members.join('')}${indent}}`;
}

/**
 * The types of the parts, from the language that the others follow.
 * @param {Record<string, Messages>} page
 * @param {string[]} tags
 */
export const typesOf = (page, tags) =>
  `// Written by site/scripts/words.mjs (make types) from cure/words/languages/en.json. Not edited by hand.

/** The tags of the languages that there are. */
export type Tag = ${tags.map((tag) => `'${tag}'`).join(' | ')};

/** The words of the page, part by part. */
export interface Words ${typeOf(page, '')}
`;
