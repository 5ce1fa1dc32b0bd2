// Every kept request of testdata/requests: the service answers what the command prints. The command prints two things: with "ask"
// the whole answer to a request, and with the verb of an operation what belongs to it. The service runs the same build of
// the core natively, and must give the same bytes; in the platform's runtime it is WebAssembly, and its numbers may lie off by
// the bounds of alike.mjs. All of them are held to the kept answers, too.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { closeness, unlike } from './alike.mjs';
import { ask } from './ask.mjs';

const json = { 'Content-Type': 'application/json' };

const folder = new URL('../../testdata/requests/', import.meta.url);
const kept = (path) => JSON.parse(readFileSync(new URL(path, folder), 'utf8'));
/** A fault as the command prints it: behind the sentence stands the place in the document, unless the sentence begins with it. */
export const complaint = ({ text, path }) => (path === '' || text.startsWith(path) ? `${text}\n` : `${text} [${path}]\n`);

export const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -'.json'.length));

/** Runs the command; its exit code is 0 where it computed, 1 where it refused. */
export function command(args, input = '') {
  const done = spawnSync(process.env.DRYWRIGHT, args, { input, encoding: 'utf8', maxBuffer: 64 << 20 });
  if (done.error) throw done.error;
  assert.ok(done.status === 0 || done.status === 1, `drywright ${args.join(' ')} ended with ${done.status}:\n${done.stderr}`);
  return done;
}

/** What the verb of an operation prints for a request, beside what the answer has of it; nothing where there is no verb. */
const verbs = {
  predict: ({ job, units = 'si' }) => [['predict', '--json', '--units', units, '-'], job, (a) => a.result],
  demo: () => [['demo'], '', (a) => a.job],
  limits: ({ job }) => [
    ['limit', '--json', '--route', 'tunnel', '--marks', 'dry_through', '--of', 'line_speed', '--levers=false', '-'],
    job,
    (a) => a.limits[0],
  ],
  window: ({ job, window: { points } }) => [
    [
      'window',
      '--json',
      '--route',
      'static_oven',
      '--marks',
      'dry_through',
      '--x',
      'dwell=10 min..60 min',
      '--y',
      'coat=50 g/m²..200 g/m²',
      '--points',
      points,
      '-',
    ],
    job,
    (a) => a.window,
  ],
  spread: ({ job, spread: { rows, replicates, seed } }) => [
    [
      'spread',
      '--json',
      '--route',
      'static_oven',
      '--marks',
      'dry_through',
      '--vary',
      'coat=5%',
      '--rows',
      rows,
      '--replicates',
      replicates,
      '--seed',
      seed,
      '-',
    ],
    job,
    (a) => a.spread,
  ],
  fit: ({ job, table, trial }) => [
    ['fit', trial.kind, '--json', '--data', '-', '--name', trial.name, '--job', { job }],
    table,
    (a) => a.outcome,
  ],
};

const scratch = mkdtempSync(join(tmpdir(), 'drywright-pairs-'));
process.once('exit', () => rmSync(scratch, { recursive: true, force: true }));

/** What the command's own verb prints, or undefined. */
function printed(request, answer) {
  if (request.op === 'check' && request.job && !answer.ok) {
    const { status, stderr } = command(['check', '--units', request.units ?? 'si', '-'], JSON.stringify(request.job));
    return { said: [status, stderr], wanted: [1, answer.faults.map(complaint).join('')] };
  }
  const verb = answer.ok && verbs[request.op]?.(request);
  if (!verb) return undefined;
  const [args, input, pick] = verb;
  const file = join(scratch, 'job.json');
  const words = args.map((a) => {
    if (typeof a !== 'object') return String(a);
    writeFileSync(file, JSON.stringify(a.job));
    return file;
  });
  const { stdout } = command(words, typeof input === 'string' ? input : JSON.stringify(input));
  return { said: JSON.parse(stdout), wanted: pick(answer) };
}

/** What the command prints for each request, each asked once. */
const said = new Map();
function asked(name) {
  if (!said.has(name)) said.set(name, command(['ask', '-'], JSON.stringify(kept(`${name}.json`))).stdout.trimEnd());
  return said.get(name);
}

/** The command against itself and the kept answers. */
export function commandPairs() {
  for (const name of names)
    test(name, () => {
      const answer = JSON.parse(asked(name));
      assert.equal(unlike(kept(`answers/${name}.json`), answer), '');
      const verb = printed(kept(`${name}.json`), answer);
      if (verb) assert.equal(unlike(verb.wanted, verb.said), '');
    });
}

/** Statuses of what is refused, by the codes of its faults. */
const statusOf = (codes) => (codes.includes('syntax') ? 400 : codes.includes('limit') ? 413 : 422);

/** What is fetched rather than asked: the address, and the member of the answer that is sent. */
const fetched = { describe: ['/v1/materials', 'catalogue'], demo: ['/v1/demo', 'job'] };

/** A service against the command: byte by byte where it is the same build, else within bounds. */
export function servicePairs(at) {
  const seen = { largest: 0, path: '' };
  for (const name of names)
    test(name, async () => {
      const request = kept(`${name}.json`);
      const want = JSON.parse(asked(name));
      const [path, part] = fetched[request.op] ?? [`/v1/${request.op}`];
      const { status, text } = await ask(at().base, path, part ? undefined : JSON.stringify(request), {
        ...json,
        'Accept-Encoding': 'gzip',
      });
      const got = JSON.parse(text);
      if (request.op === 'guess') return assert.equal(status, 404, text); // there is no such address
      if (!want.ok) {
        assert.equal(status, statusOf(want.faults.map((f) => f.code)), text);
        return assert.equal(unlike(want.faults, got.faults), '');
      }
      assert.equal(status, 200, text);
      if (at().sameBuild) return part ? assert.deepEqual(got, want[part]) : assert.equal(text, asked(name));
      return assert.equal(unlike(part ? want[part] : want, got, seen, name), '');
    });
  after(() => {
    const path = seen.path ? ` (${seen.path})` : '';
    console.log(
      `  ${at().name}: ${names.length} pairs, largest difference of a number ${seen.largest.toExponential(1)} of it${path}, allowed ${closeness}`,
    );
  });
}
