// What the service carries on this machine: requests a second, latency, errors, memory; and that a killed request takes
// nothing else with it. Run by `make load`, on a machine at rest.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { native, workerd } from './start.mjs';

const job = execFileSync(process.env.DRYWRIGHT, ['demo'], { encoding: 'utf8' });
const question = `{"job":${job}}`;

/** Sends one question; gives the milliseconds that it took, and throws where the answer is not 200. */
const send = (agent, base, path) =>
  new Promise((resolve, reject) => {
    const begun = performance.now();
    const r = request(base + path, { method: 'POST', agent, headers: { 'Content-Type': 'application/json' } }, (response) => {
      response.resume();
      response.once('end', () =>
        response.statusCode === 200 ? resolve(performance.now() - begun) : reject(new Error(`status ${response.statusCode}`)),
      );
    });
    r.once('error', reject);
    r.end(question);
  });

async function load(base, path, connections, count) {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times = [];
  let [sent, errors] = [0, 0];
  const begun = performance.now();
  const one = async () => {
    while (sent < count) {
      sent++;
      try {
        times.push(await send(agent, base, path));
      } catch {
        errors++;
      }
    }
  };
  await Promise.all(Array.from({ length: connections }, one));
  agent.destroy();
  times.sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? NaN;
  return { perSecond: (1000 * times.length) / (performance.now() - begun), median: at(0.5), late: at(0.99), errors };
}

/** Memory in use by a process and all below it [MB]; Linux only. */
function memory(pid) {
  const below = new Map();
  for (const name of readdirSync('/proc').filter((n) => /^\d+$/.test(n))) {
    try {
      const status = readFileSync(`/proc/${name}/status`, 'utf8');
      const parent = Number(/^PPid:\s+(\d+)/m.exec(status)?.[1]);
      below.set(Number(name), { parent, size: Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? 0) / 1024 });
    } catch {
      // gone meanwhile
    }
  }
  const inside = (p) => p === pid || (below.has(p) && below.get(p).parent > 1 && inside(below.get(p).parent));
  return [...below].filter(([p]) => inside(p)).reduce((sum, [, { size }]) => sum + size, 0);
}

console.log('service   asked      connections   a second   median, ms   99th, ms   errors');
const line = (name, path, connections, r) =>
  console.log(
    `${name.padEnd(10)}${path.slice(4).padEnd(10)}${String(connections).padStart(12)}${r.perSecond.toFixed(1).padStart(11)}` +
      `${r.median.toFixed(1).padStart(13)}${r.late.toFixed(1).padStart(11)}${String(r.errors).padStart(9)}`,
  );

let failed = false;
for (const [start, connections, counts] of [
  [native, [1, 8, 64], { '/v1/check': 3000, '/v1/predict': 300 }],
  [workerd, [1, 4], { '/v1/check': 300, '/v1/predict': 40 }],
]) {
  const service = await start();
  try {
    for (const [path, count] of Object.entries(counts)) {
      await load(service.base, path, 2, 10); // warm
      for (const c of connections) {
        const r = await load(service.base, path, c, count);
        failed ||= r.errors > 0;
        line(service.name, path, c, r);
      }
    }
    if (start === native) {
      const sizes = [];
      for (let part = 0; part <= 10; part++) {
        if (part > 0) await load(service.base, '/v1/check', 8, 1000);
        sizes.push(Math.round(memory(service.pid)));
      }
      console.log(`memory over 10,000 requests, MB at each thousand: ${sizes.join(' ')}`);
    }
    failed ||= !(await cutOff(service));
  } finally {
    await service.end();
  }
}
process.exitCode = failed ? 1 : 0;

/** Breaks off requests on their way; the service must answer the others as before. */
async function cutOff(service) {
  const good = load(service.base, '/v1/check', 2, 40);
  for (let i = 0; i < 10; i++) {
    const r = request(service.base + '/v1/predict', { method: 'POST', headers: { 'Content-Type': 'application/json', 'Content-Length': 1e5 } });
    r.once('error', () => {});
    r.write(question.slice(0, 1000));
    await new Promise((resolve) => setTimeout(resolve, 20));
    r.destroy();
  }
  const { errors } = await good;
  const after = await load(service.base, '/v1/check', 1, 5);
  console.log(`${service.name}: 10 requests broken off on their way; of 45 others ${errors + after.errors} failed`);
  return errors + after.errors === 0;
}
