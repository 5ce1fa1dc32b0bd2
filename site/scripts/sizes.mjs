// What a browser has to load, compressed with brotli, in the order in which it is asked for, and the page in one file. Ends with an error when anything is beyond its limit. Run by `make sizes`.
import { readdir, readFile } from 'node:fs/promises';
import { brotliCompressSync } from 'node:zlib';
import { build } from 'vite';

const site = new URL('..', import.meta.url);
const { output } = await build({ root: site.pathname, logLevel: 'silent', build: { write: false } });
const files = new Map(output.map((file) => [file.fileName, file]));
const weigh = (bytes) => brotliCompressSync(bytes).length;
const weight = (name) =>
  weigh(files.get(name).type === 'chunk' ? files.get(name).code : files.get(name).source);
const total = (names) => [...names].reduce((sum, name) => sum + weight(name), 0);
const onDisk = (path) => readFile(new URL(path, site));
const fromDisk = async (path) => weigh(await onDisk(path));

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

const entry = output.find((file) => file.isEntry).fileName;
const first = closure(entry).add('index.html');
const page = closure(chunk('Page'), new Set(first)).add(chunk('en-main'));
const paint = total(first) + (await fromDisk('public/theme.js'));
const answers = total(without(page, first));
const script = total([...files.keys()].filter((name) => name.includes('worker')));
const drawings = total(without(closure(chunk('drawings')), page));

/** Every other part that is loaded when it is wanted: whatever the page imports later, by the name of its file. */
const behind = output
  .filter((file) => file.type === 'chunk' && file.isDynamicEntry && !['Page', 'drawings'].includes(file.name))
  .map((file) => [`later: ${file.name}`, total(without(closure(file.fileName), page))]);

const cores = (await readdir(new URL('public', site))).filter((name) => name.endsWith('.wasm'));
const singleFile = process.argv[2] ?? 'dist-single/drywright.html';

/** What, its bytes, and the most that it may weigh, where there is such a limit. */
const rows = [
  ['up to the answers: HTML, styles, scripts', paint + answers, 45_000],
  ['  of it the first paint', paint],
  ['the worker, with the runtime script', script + (await fromDisk('public/wasm_exec.js'))],
  ...(await Promise.all(
    cores.map(async (name) => [`core: ${name}`, await fromDisk(`public/${name}`), 950_000]),
  )),
  ['later: drawings, with the chart library', drawings, 95_000],
  ...behind,
  ['the page in one file', await fromDisk(singleFile), 2_500_000],
  ['  the same as it lies on a disk', (await onDisk(singleFile)).length],
];

const number = (n) => n.toLocaleString('en').padStart(11);
console.log(`${'bytes, compressed'.padEnd(52)}${'is'.padStart(11)}${'at most'.padStart(11)}`);
for (const [name, bytes, most] of rows)
  console.log(
    `${name.padEnd(52)}${number(bytes)}${most ? number(most) : ''}${bytes > most ? '  TOO MUCH' : ''}`,
  );

const over = rows.filter(([, bytes, most]) => bytes > most).map(([name]) => name);
if (over.length > 0) {
  console.error(`Beyond its limit: ${over.join('; ')}. Load later what can wait, or leave it out.`);
  process.exitCode = 1;
}
