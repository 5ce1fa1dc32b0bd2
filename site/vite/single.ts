/**
 * Puts the whole page into one HTML file that opens from disk: styles, script, worker and core inside, and a policy that
 * lets nothing else in. The core lies gzipped in base64 in an element that is no script, so that reading it costs no parsing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Plugin, type Rolldown } from 'vite';
import { digest } from './files.mjs';
import { partsOf } from './licences.ts';
import { directives } from './policy.ts';

const site = new URL('..', import.meta.url).pathname;
const file = (path: string): Buffer => readFileSync(join(site, path));

/** A text as the content of a script element, which would end at its own end tag. */
const contained = (text: string): string =>
  text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');

const script = (code: string): string => `<script>${contained(code)}</script>`;
/** A module that imports nothing needs no address, and starts from disk as well. */
const module = (code: string): string => `<script type="module">${contained(code)}</script>`;
const block = (id: string, type: string, text: string): string =>
  `<script type="${type}" id="${id}">${contained(text)}</script>`;

/** The directives of the served page with digests in the place of its own files. */
function policyOf(scripts: readonly string[], styles: readonly string[]): string {
  const digests = (texts: readonly string[]): string => texts.map((t) => `'${digest(t)}'`).join(' ');
  const instead: Record<string, string> = {
    'script-src': `script-src ${digests(scripts)} 'wasm-unsafe-eval'`,
    'style-src': `style-src ${digests(styles)}`,
    'worker-src': 'worker-src blob:',
    'img-src': 'img-src data: blob:',
    'connect-src': "connect-src 'none'",
    'manifest-src': "manifest-src 'none'",
  };
  return directives.map((d) => instead[d.split(' ')[0] ?? ''] ?? d).join('; ');
}

/** The worker in one classic script: from disk, a module would have nothing to import from. */
async function workerScript(): Promise<string> {
  const outcome = (await build({
    root: site,
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      target: 'es2023',
      write: false,
      rolldownOptions: { input: join(site, 'src/engine/worker.ts'), output: { format: 'iife' } },
    },
  })) as Rolldown.RolldownOutput;
  return outcome.output[0].code;
}

/** The page's HTML without what it would load: those elements are replaced by their content. */
function bare(html: string): string {
  return html
    .replace(/<link rel="manifest"[^>]*>/, '')
    .replace(/<link rel="stylesheet"[^>]*>/g, '')
    .replace(/<link rel="modulepreload"[^>]*>/g, '')
    .replace(/<script[^>]*src=[^>]*><\/script>/g, '');
}

/** core is the program, words the folder of the core's language files. */
export const single = (core: string, words: string): Plugin => ({
  name: 'drywright-single',
  apply: 'build',
  config: () => ({
    publicDir: false,
    resolve: { alias: [{ find: /^(.*)\/engine\/browser$/, replacement: '$1/engine/inside' }] },
    build: {
      outDir: 'dist-single',
      cssCodeSplit: false,
      modulePreload: false,
      rolldownOptions: { output: { codeSplitting: false } },
    },
  }),
  enforce: 'post',
  generateBundle: {
    order: 'post',
    async handler(_, bundle) {
      const outputs = Object.values(bundle);
      const chunks = outputs.filter((o) => o.type === 'chunk');
      const [page] = chunks;
      const html = bundle['index.html'];
      if (!page || chunks.length !== 1 || html?.type !== 'asset')
        throw new Error(`the single file wants one script and one page: ${Object.keys(bundle).join(', ')}`);
      const sheets = outputs.filter((o) => o.type === 'asset' && o.fileName.endsWith('.css'));
      const style = sheets.map((o) => String((o as Rolldown.OutputAsset).source)).join('\n');
      const theme = contained(file('public/theme.js').toString());
      const app = contained(page.code);
      const icon = `data:image/svg+xml;base64,${file('public/favicon.svg').toString('base64')}`;
      const head = [
        `<meta http-equiv="Content-Security-Policy" content="${policyOf([theme, app], [style])}">`,
        `<style>${style}</style>`,
        script(theme),
      ];
      const body = [
        block('runtime', 'text/plain', file('public/wasm_exec.js').toString()),
        block('worker', 'text/plain', await workerScript()),
        block('licences', 'application/json', JSON.stringify(partsOf(page.moduleIds))),
        ...readdirSync(join(site, words)).map((name) =>
          block(`words-${basename(name, '.json')}`, 'application/json', file(join(words, name)).toString()),
        ),
        block('core', 'text/plain', gzipSync(file(core), { level: 9 }).toString('base64')),
        module(page.code),
      ];
      // Functions, since a text in their place would have its dollar signs read.
      const whole = bare(String(html.source))
        .replace(/href="[^"]*favicon\.svg"/, () => `href="${icon}"`)
        .replace(/<meta name="color-scheme"/, (tag) => `${head.join('\n')}\n${tag}`)
        .replace('</body>', () => `${body.join('\n')}\n</body>`);
      for (const name of Object.keys(bundle)) Reflect.deleteProperty(bundle, name);
      this.emitFile({ type: 'asset', fileName: 'drywright.html', source: whole });
    },
  },
});
