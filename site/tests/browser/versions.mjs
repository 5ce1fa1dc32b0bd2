// Versions of the built page on a server of the test's own, which can be told to lose what it is asked for.
import { createServer } from 'node:http';
import { extname } from 'node:path';
import { digestsOf, scriptOf } from '../../vite/files.mjs';

const types = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** All files of the page that stands at an address, as its service worker lists them. */
export async function copyOf(address) {
  const bytes = async (path) => Buffer.from(await (await fetch(new URL(path, address))).arrayBuffer());
  const script = await bytes('sw.js');
  const { files } = JSON.parse(/^const built = (.*);\n/.exec(script.toString())[1]);
  const all = await Promise.all(Object.keys(files).map(async (p) => [p === '' ? 'index.html' : p, await bytes(p)]));
  return new Map([...all, ['sw.js', script]]);
}

/** A later version: the page and one of its scripts say so, and the worker lists their new digests. */
export function laterThan(files, name) {
  const later = new Map(files);
  const text = (path) => files.get(path).toString();
  later.set('index.html', Buffer.from(text('index.html').replace('<html', `<html data-version="${name}"`)));
  later.set('theme.js', Buffer.from(`${text('theme.js')}document.documentElement.dataset.script = '${name}';\n`));
  const code = text('sw.js').replace(/^const built = .*\n/, '');
  later.set('sw.js', Buffer.from(scriptOf(code, digestsOf(later))));
  return later;
}

/**
 * Serves a version on a free port of the loopback address. Its `files` may be exchanged at any time; `fault(path)` says
 * what goes wrong with a path: 'missing', 'cut' (the connection ends in the middle), 'silent' (no answer), or null.
 */
export async function serveFiles(files) {
  const host = { files, fault: () => null, asked: [] };
  const server = createServer((request, response) => {
    const path = new URL(request.url, 'http://x').pathname.slice(1) || 'index.html';
    const [bytes, fault] = [host.files.get(path), host.fault(path)];
    host.asked.push(path);
    if (fault === 'silent') return;
    if (!bytes || fault === 'missing') {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'Content-Type': types[extname(path)] ?? 'text/plain', 'Content-Length': bytes.length, 'Cache-Control': 'no-cache' });
    if (fault === 'cut') response.write(bytes.subarray(0, bytes.length >> 1), () => response.destroy());
    else response.end(bytes);
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  host.address = `http://127.0.0.1:${server.address().port}/`;
  host.stop = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return host;
}
