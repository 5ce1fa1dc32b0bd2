import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';

/**
 * What the built page may load: its own files, WebAssembly, and nothing from anywhere else. Kept out of the development
 * server, which injects styles and a socket of its own.
 */
const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

function contentSecurityPolicy(): Plugin {
  return {
    name: 'drywright-content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
        injectTo: 'head-prepend',
      },
    ],
  };
}

export default defineConfig({
  // Relative, so that the built folder works under any path and from the command's embedded copy.
  base: './',
  plugins: [svelte(), contentSecurityPolicy()],
  build: { target: 'es2023', assetsInlineLimit: 0, reportCompressedSize: true },
  worker: { format: 'es' },
});
