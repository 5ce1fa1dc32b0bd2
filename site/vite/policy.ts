/** What the built page may load: policy.txt, one directive a line, which the command sends as a header, too. */
import { readFileSync } from 'node:fs';
import type { HtmlTagDescriptor, Plugin } from 'vite';

export const directives = readFileSync(new URL('../policy.txt', import.meta.url), 'utf8')
  .trim()
  .split('\n');

export const policyTag = (lines: readonly string[]): HtmlTagDescriptor => ({
  tag: 'meta',
  attrs: { 'http-equiv': 'Content-Security-Policy', content: lines.join('; ') },
  injectTo: 'head-prepend',
});

/** Kept out of the development server, which injects styles and a socket of its own. */
export const contentSecurityPolicy = (): Plugin => ({
  name: 'drywright-content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [policyTag(directives)],
});
