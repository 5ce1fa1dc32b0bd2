// The platform's own runtime on this machine. As a script it serves until it is ended (`make edge-dev`):
//
//   node platform.mjs --port 8417
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));

/** Settings under which the tools report nothing, look for no newer version, and ask nobody where this machine is. */
const quiet = {
  WRANGLER_SEND_METRICS: 'false',
  WRANGLER_SEND_ERROR_REPORTS: 'false',
  WRANGLER_HIDE_BANNER: 'true',
  CLOUDFLARE_CF_FETCH_ENABLED: 'false',
  CI: '1',
  // Should one of these ever be forgotten: see there.
  NODE_OPTIONS: `--require=${join(here, 'confine.cjs')}`,
};

/** Starts it with further words of the command line; environment and the rest of the options are those of spawn. */
export const platform = (words, { env = {}, ...options }) =>
  spawn(join(here, 'node_modules/.bin/wrangler'), ['dev', '--local', '--ip', '127.0.0.1', '--inspector-port', '0', ...words], {
    ...options,
    cwd: here,
    env: { ...process.env, ...quiet, ...env },
  });

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const child = platform(process.argv.slice(2), { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  child.once('exit', (code) => (process.exitCode = code ?? 0));
}
