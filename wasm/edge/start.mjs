// Starts the service on a free port of this machine: natively, or in the platform's own runtime.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));

/** A port that was free a moment ago. */
const freePort = () =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });

async function ready(base, child) {
  for (let tried = 0; tried < 600; tried++) {
    if (child.exitCode !== null) break;
    try {
      if ((await fetch(`${base}/v1/health`)).ok) return;
    } catch {
      // not yet
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the service does not answer at ${base}`);
}

/** Ends a process and all that it has started, and waits for it. */
function ender(child, after = () => {}) {
  const gone = new Promise((resolve) => child.once('exit', resolve));
  return async (signal = 'SIGTERM') => {
    try {
      process.kill(-child.pid, signal);
    } catch {
      // gone already
    }
    await gone;
    after();
  };
}

export async function native() {
  const port = await freePort();
  const child = spawn(process.env.DRYWRIGHT, ['serve', '--api', '--port', String(port)], { stdio: 'ignore', detached: true });
  const base = `http://127.0.0.1:${port}`;
  await ready(base, child);
  return { name: 'native', base, pid: child.pid, end: ender(child) };
}

export async function workerd() {
  const port = await freePort();
  const state = mkdtempSync(join(tmpdir(), 'drywright-edge-'));
  const child = spawn(
    join(here, 'node_modules/.bin/wrangler'),
    ['dev', '--local', '--ip', '127.0.0.1', '--port', String(port), '--inspector-port', '0', '--log-level', 'error', '--persist-to', state],
    { cwd: here, stdio: 'ignore', detached: true, env: { ...process.env, WRANGLER_SEND_METRICS: 'false', CI: '1' } },
  );
  const base = `http://127.0.0.1:${port}`;
  await ready(base, child);
  return { name: 'workerd', base, pid: child.pid, end: ender(child, () => rmSync(state, { recursive: true, force: true })) };
}
