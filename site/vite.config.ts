import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { licences } from './vite/licences.ts';
import { offline } from './vite/offline.ts';
import { contentSecurityPolicy } from './vite/policy.ts';
import { words } from './vite/words/plugin.mjs';

export default defineConfig({
  // Relative, so that the built folder works under any path and from the command's embedded copy.
  base: './',
  plugins: [svelte(), words(), contentSecurityPolicy(), licences(), offline()],
  build: { target: 'es2023', assetsInlineLimit: 0, reportCompressedSize: true },
  worker: { format: 'es' },
});
