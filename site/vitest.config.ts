import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { words } from './vite/words/plugin.mjs';

export default defineConfig({
  plugins: [svelte(), words()],
  resolve: { conditions: ['browser'] },
  test: {
    include: ['tests/unit/**/*.test.ts'],
    setupFiles: ['tests/unit/words.ts'],
    environment: 'node',
    testTimeout: 60_000, // a busy machine is no fault of the page
  },
});
