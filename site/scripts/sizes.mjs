// What a browser has to load, compressed with brotli, in the order in which it is asked for. Ends with an error when
// what stands before the answers has grown beyond its limit. Run by `npm run sizes`, after `make wasm`.
import { readFile } from 'node:fs/promises';
import { brotliCompressSync } from 'node:zlib';
import { build } from 'vite';

/** What scripts, styles and HTML up to the answers may weigh together, without drawings, worker and core [bytes]. */
const limit = 45_000;

const site = new URL('..', import.meta.url);
const { output } = await build({ root: site.pathname, logLevel: 'silent', build: { write: false } });
const files = new Map(output.map((file) => [file.fileName, file]));
const weigh = (bytes) => brotliCompressSync(bytes).length;
const weight = (name) =>
  weigh(files.get(name).type === 'chunk' ? files.get(name).code : files.get(name).source);
const total = (names) => [...names].reduce((sum, name) => sum + weight(name), 0);
const fromDisk = async (path) => weigh(await readFile(new URL(path, site)));

/** A chunk with its styles and all that it cannot start without. */
function closure(name, found = new Set()) {
  if (found.has(name)) return found;
  const { imports = [], viteMetadata } = files.get(name);
  found.add(name);
  for (const style of viteMetadata?.importedCss ?? []) found.add(style);
  for (const other of imports) closure(other, found);
  return found;
}

const chunk = (name) => output.find((file) => file.type === 'chunk' && file.name === name)?.fileName;
const without = (names, taken) => [...names].filter((name) => !taken.has(name));

const first = closure(output.find((file) => file.isEntry).fileName).add('index.html');
const page = closure(chunk('Page'), new Set(first)).add(chunk('en-main'));
const parts = [
  ['first paint: HTML, styles, scripts', total(first) + (await fromDisk('public/theme.js'))],
  ['then the page: answers, heads of the form', total(without(page, first))],
  ['beside it: fields of the form', total(without(closure(chunk('SectionBody')), page)) + weight(chunk('en-inputs'))],
  ['later: detail and print', total(without(closure(chunk('later')), page))],
  ['later: planning', total(without(closure(chunk('plan')), page))],
  ['later: your own trial', total(without(closure(chunk('trial')), page))],
  ['later: drawings, with Plot', total(without(closure(chunk('drawings')), page))],
  [
    'the worker, with the runtime script',
    total([...files.keys()].filter((name) => name.includes('worker'))) +
      (await fromDisk('public/wasm_exec.js')),
  ],
  ['the core', await fromDisk('public/core.wasm')],
  ['later: the core that plans', await fromDisk('public/planner.wasm')],
  ['later: the core that fits trials', await fromDisk('public/fitter.wasm')],
];
for (const [name, bytes] of parts)
  console.log(`${name.padEnd(44)}${bytes.toLocaleString('en').padStart(9)} bytes`);

const [paint, answers] = parts.map(([, bytes]) => bytes);
if (paint + answers > limit) {
  console.error(
    `First paint and page may weigh ${limit.toLocaleString('en')} bytes: load later what they can do without.`,
  );
  process.exitCode = 1;
}
