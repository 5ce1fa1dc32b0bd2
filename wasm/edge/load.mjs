// What the service carries on this machine: what one request costs, requests a second, latency, errors, memory, and that killing
// it in mid-request loses nothing but that request. Run by `make load`; times are of a machine at rest only if it is at rest.
import { request } from 'node:http';
import { loadavg } from 'node:os';
import { load, memory, processor } from './measure.mjs';
import { command } from './pairs.mjs';
import { alone, native } from './start.mjs';

/** SHARE=0.1 sends a tenth of the requests, on a machine that is busy. */
const share = Number(process.env.SHARE ?? 1);
const many = (count, least = 1) => Math.max(least, Math.round(count * share));

const demo = (which) => `{"job":${command(['demo', '--which', which]).stdout}}`;
const health = { path: '/v1/health' };
const check = { path: '/v1/check', body: demo('sleeves') };
const predict = { path: '/v1/predict', body: demo('sleeves') };

let failed = false;
/** Prints what does not hold, and has the run fail. */
function must(holds, complaint) {
  if (holds) return;
  failed = true;
  console.log(`FAILED: ${complaint}`);
}

const cells = (words, widths) => words.map((word, i) => String(word).padStart(widths[i])).join('');
const ms = (x) => x.toFixed(1);

/** One request after the other: latency, and processor time, which hangs less on what else the machine does. */
async function costs(service) {
  console.log(`\n${service.name}, one request after the other      median, ms   processor, ms a request`);
  for (const [name, question, count] of [
    ['health: no work', health, many(20, 4)],
    ['check of a job', check, many(20, 4)],
    ...['sleeves', 'shop', 'line', 'faster'].map((which) => [`predict, ${which}`, { path: '/v1/predict', body: demo(which) }, many(8, 2)]),
  ]) {
    await load(service.base, question, 1, 1); // warm
    const before = processor(service.pid);
    const r = await load(service.base, question, 1, count);
    must(r.errors.length === 0, `${name}: ${r.errors[0]}`);
    console.log(`  ${name.padEnd(34)}${cells([ms(r.median), ms((processor(service.pid) - before) / count)], [12, 19])}`);
  }
}

async function throughput(service, connections, counts) {
  const widths = [12, 11, 13, 11, 9];
  console.log(`\n${service.name.padEnd(18)}${cells(['connections', 'a second', 'median, ms', '99th, ms', 'errors'], widths)}`);
  for (const [name, question, count] of counts)
    for (const c of connections) {
      const r = await load(service.base, question, c, many(count, c));
      must(r.errors.length === 0, `${name}, ${c} connections: ${r.errors[0]}`);
      console.log(`  ${name.padEnd(16)}${cells([c, ms(r.perSecond), ms(r.median), ms(r.late), r.errors.length], widths)}`);
    }
}

/** Memory over many requests: what the second half of them takes must not grow beyond what the first half took. */
async function flat(service, question, count) {
  const sizes = [];
  for (let part = 0; part <= 10; part++) {
    if (part > 0) {
      const { errors } = await load(service.base, question, 4, count / 10);
      must(errors.length === 0, `of ${count / 10} requests ${errors.length} failed: ${errors[0]}`);
    }
    sizes.push(Math.round(memory(service.pid)));
  }
  console.log(`\n${service.name}: memory over ${count} requests to ${question.path}, MB: ${sizes.join(' ')}`);
  const [first, second] = [sizes.slice(1, 6), sizes.slice(6)].map((half) => Math.max(...half));
  must(second <= 1.25 * first, `memory grows from ${first} to ${second} MB`); // a quarter: collectors run when they like
}

/** Breaks off requests on their way; the service must answer the others as before. */
async function brokenOff(service) {
  const others = load(service.base, check, 2, 40);
  for (let i = 0; i < 10; i++) {
    const headers = { 'Content-Type': 'application/json', 'Content-Length': predict.body.length };
    const r = request(service.base + predict.path, { method: 'POST', headers, agent: false });
    r.once('error', () => {});
    if (i % 2)
      r.end(predict.body); // broken off while it is computed
    else r.write(predict.body.slice(0, 1000)); // or while it is sent
    await new Promise((resolve) => setTimeout(resolve, 30));
    r.destroy();
  }
  const errors = [...(await others).errors, ...(await load(service.base, check, 1, 5)).errors];
  must(errors.length === 0, `others failed: ${errors[0]}`);
  console.log(`${service.name}: 10 requests broken off on their way; of 45 others ${errors.length} failed`);
}

/** Kills the service while it computes, and starts it anew at the same address: only what was under way is lost. */
async function killed(start, service) {
  const answer = async () =>
    (
      await fetch(service.base + predict.path, { method: 'POST', body: predict.body, headers: { 'Content-Type': 'application/json' } })
    ).text();
  const before = await answer();
  const underWay = load(service.base, predict, 4, 4);
  await new Promise((resolve) => setTimeout(resolve, 60));
  await service.end('SIGKILL');
  const { errors } = await underWay;
  const again = await start(service.port);
  const same = (await answer()) === before;
  must(same, 'another answer after a kill');
  console.log(
    `${service.name}: killed with 4 requests under way, ${errors.length} of which were lost; started anew it gives ${same ? 'the same answer' : 'ANOTHER ANSWER'}`,
  );
  return again;
}

console.log(`load of the machine before: ${loadavg().map(ms).join(' ')}`);
for (const [start, connections, counts] of [
  [
    native,
    [1, 8, 64],
    [
      ['check', check, 1000],
      ['predict', predict, 128],
    ],
  ],
  // Not under the tools' development server: it restarts the service when it likes, and answers what was under way with 503.
  [
    alone,
    [1, 4],
    [
      ['check', check, 60],
      ['predict', predict, 24],
    ],
  ],
]) {
  let service = await start();
  try {
    await costs(service);
    await throughput(service, connections, counts);
    await brokenOff(service);
    service = await killed(start, service);
  } finally {
    await service.end();
  }
}
// In the runtime each request starts an instance of its own, so that one without work shows whether they are let go.
for (const [start, question] of [
  [native, check],
  [alone, health],
]) {
  const service = await start();
  try {
    await flat(service, question, 10 * many(1000));
  } finally {
    await service.end();
  }
}
console.log(`\nload of the machine after: ${loadavg().map(ms).join(' ')}`);
process.exitCode = failed ? 1 : 0;
