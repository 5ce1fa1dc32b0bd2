// What a running service takes: time, processor, memory. Processor and memory are read where Linux tells them.
import { readdirSync, readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';

/** Sends one question over an agent; gives the milliseconds that it took, and throws where the answer is not 200. */
const send = (agent, base, { path, body }) =>
  new Promise((resolve, reject) => {
    const begun = performance.now();
    const method = body === undefined ? 'GET' : 'POST';
    const r = request(base + path, { method, agent, headers: { 'Content-Type': 'application/json' } }, (response) => {
      response.resume();
      response.once('error', reject);
      response.once('end', () =>
        response.statusCode === 200 ? resolve(performance.now() - begun) : reject(new Error(`status ${response.statusCode}`)),
      );
    });
    r.once('error', reject);
    r.end(body);
  });

/** Asks the same over several connections, each kept open, until count requests are sent. Times are milliseconds. */
export async function load(base, question, connections, count) {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times = [];
  const errors = [];
  let sent = 0;
  const begun = performance.now();
  const one = async () => {
    while (sent < count) {
      sent++;
      try {
        times.push(await send(agent, base, question));
      } catch (error) {
        errors.push(error.message);
      }
    }
  };
  await Promise.all(Array.from({ length: connections }, one));
  const perSecond = (1000 * times.length) / (performance.now() - begun);
  agent.destroy();
  times.sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? NaN;
  return { perSecond, median: at(0.5), late: at(0.99), errors };
}

/** A process and all that descend from it. */
function family(pid) {
  const parents = new Map();
  for (const name of readdirSync('/proc').filter((n) => /^\d+$/.test(n))) {
    try {
      parents.set(Number(name), Number(/^PPid:\s+(\d+)/m.exec(readFileSync(`/proc/${name}/status`, 'utf8'))[1]));
    } catch {
      // gone meanwhile
    }
  }
  const inside = (p) => p === pid || (parents.get(p) > 1 && inside(parents.get(p)));
  return [...parents.keys()].filter(inside);
}

/** The sum of something over a process and its family. */
const sum = (pid, of) =>
  family(pid).reduce((total, p) => {
    try {
      return total + of(p);
    } catch {
      return total; // gone meanwhile
    }
  }, 0);

/** Memory in use [MB]. */
export const memory = (pid) => sum(pid, (p) => Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${p}/status`, 'utf8'))?.[1] ?? 0) / 1024);

/** Processor time spent so far [ms]; the kernel counts hundredths of a second. */
export const processor = (pid) =>
  sum(pid, (p) => {
    // Behind the name in brackets, which may hold spaces, utime and stime are the 12th and 13th word.
    const words = readFileSync(`/proc/${p}/stat`, 'utf8').split(') ').at(-1).split(' ');
    return 10 * (Number(words[11]) + Number(words[12]));
  });
