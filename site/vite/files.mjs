/** The list of a build's files that the service worker keeps, and the script that holds it. Used by the browser tests, too. */
import { createHash } from 'node:crypto';

/**
 * A digest as subresource integrity and content security policies write it.
 * @param {Uint8Array | string} bytes
 */
export const digest = (bytes) => `sha256-${createHash('sha256').update(bytes).digest('base64')}`;

/**
 * The files of a build with their digests, the worker's own script left out; the page itself goes by the empty path.
 * @param {ReadonlyMap<string, Uint8Array>} files by paths relative to the page
 * @returns {Record<string, string>}
 */
export function digestsOf(files) {
  const kept = [...files].filter(([path]) => path !== 'sw.js');
  return Object.fromEntries(
    kept.map(([path, bytes]) => [path === 'index.html' ? '' : path, digest(bytes)]).sort(),
  );
}

/**
 * The worker's script with its list on the first line, so that any change of any file makes it another script.
 * @param {string} code
 * @param {Record<string, string>} files
 */
export function scriptOf(code, files) {
  const version = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16);
  return `const built = ${JSON.stringify({ version, files })};\n${code}`;
}
