// Starts the service on a free port of this machine: natively, or in the platform's own runtime.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { platform } from './platform.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));

/** A port that was free a moment ago. */
const freePort = () =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });

/** How long a start may take on a machine that has other things to do [s]. */
const startTime = 120;

async function ready(base, child) {
  const until = performance.now() + 1000 * startTime;
  while (performance.now() < until && child.exitCode === null) {
    try {
      if ((await fetch(`${base}/v1/health`)).ok) return;
    } catch {
      // not yet
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the service does not answer at ${base}`);
}

/** Whatever was started and not ended ends with this process. */
const running = new Set();
process.once('exit', () => running.forEach((child) => signal(child, 'SIGKILL')));
for (const name of ['SIGINT', 'SIGTERM']) process.once(name, () => process.exit(1));

/** Signals a process and all that it has started. */
function signal(child, name) {
  try {
    process.kill(-child.pid, name);
  } catch {
    // gone already
  }
}

/** A running service: its name and address, whether it is the same build as the command, and end, which waits for its end. */
async function service(name, sameBuild, port, child, more = {}) {
  running.add(child);
  const gone = new Promise((resolve) => child.once('exit', resolve));
  const base = `http://127.0.0.1:${port}`;
  const end = async (how = 'SIGTERM') => {
    signal(child, how);
    await gone;
    running.delete(child);
    more.after?.();
  };
  try {
    await ready(base, child);
  } catch (error) {
    await end('SIGKILL');
    throw error;
  }
  return { name, sameBuild, base, port, pid: child.pid, end, outside: more.outside ?? (() => '') };
}

export async function native(port) {
  port ??= await freePort();
  const child = spawn(process.env.DRYWRIGHT, ['serve', '--api', '--port', String(port)], { stdio: 'ignore', detached: true });
  return service('native', true, port, child);
}

export async function workerd(port) {
  port ??= await freePort();
  const state = mkdtempSync(join(tmpdir(), 'drywright-edge-'));
  const asked = join(state, 'asked');
  const child = platform(['--port', String(port), '--log-level', 'error', '--persist-to', state], {
    stdio: 'ignore',
    detached: true,
    env: { CONFINED: asked },
  });
  return service('workerd', false, port, child, {
    after: () => rmSync(state, { recursive: true, force: true }),
    outside: () => (existsSync(asked) ? readFileSync(asked, 'utf8') : ''), // whom the tools wanted to ask
  });
}

/** The runtime without the tools in front of it, which have memory of their own. */
export async function alone(port) {
  port ??= await freePort();
  const words = ['serve', join(here, 'runtime.capnp'), `--socket-addr=http=127.0.0.1:${port}`];
  const child = spawn(join(here, 'node_modules/.bin/workerd'), words, { stdio: 'ignore', detached: true });
  return service('workerd', false, port, child);
}
