import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { licences } from './vite/licences.ts';
import { offline } from './vite/offline.ts';
import { contentSecurityPolicy } from './vite/policy.ts';
import { single } from './vite/single.ts';
import { words } from './vite/words/plugin.mjs';

/** What stands before the first answer and is needed later as well, in one file: many small ones compress badly. */
const shared = [
  'engine/(?:client|browser)',
  'text/(?:index|language|quantity|say|voice)',
  'page/(?:context|Icon)',
  'state/(?:display|lay|number|path)',
  'form/(?:digest|layout|records)',
  'chart/(?:Fold|time|unfolding)',
];
const first = {
  name: 'first',
  test: new RegExp(`/node_modules/svelte/|^\0virtual:words$|/src/(?:${shared.join('|')})[.]`),
};

// `vite build` makes the page in a folder to be served, `vite build --mode single` the page in one file.
export default defineConfig(({ mode }) => ({
  // Relative, so that the built folder works under any path and from the command's embedded copy.
  base: './',
  plugins: [
    svelte(),
    words(),
    ...(mode === 'single'
      ? [single('../.build/whole.wasm', 'public/words')]
      : [contentSecurityPolicy(), licences(), offline()]),
  ],
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    reportCompressedSize: mode !== 'single',
    // Browsers that know the target know modulepreload.
    modulePreload: { polyfill: false },
    ...(mode === 'single' ? {} : { rolldownOptions: { output: { codeSplitting: { groups: [first] } } } }),
  },
  worker: { format: 'es' },
}));
