import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { licences } from './vite/licences.ts';
import { offline } from './vite/offline.ts';
import { contentSecurityPolicy } from './vite/policy.ts';

export default defineConfig({
  // Relative, so that the built folder works under any path and from the command's embedded copy.
  base: './',
  plugins: [svelte(), contentSecurityPolicy(), licences(), offline()],
  build: { target: 'es2023', assetsInlineLimit: 0, reportCompressedSize: true },
  worker: { format: 'es' },
});
