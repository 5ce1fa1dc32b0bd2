// The command, as the browser test uses it: the demo job, the answer to a job, the reasons of a refusal, the server.
import { spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';

const command = process.env.DRYWRIGHT;
if (!command) throw new Error('DRYWRIGHT must name the built command; run this test with: make browser-test');

const known = new Map();

/** Runs the command. It says the same to the same, so that a question that is asked again is answered from memory. */
function run(args, input, code) {
  const key = JSON.stringify([args, input, code]);
  if (!known.has(key)) known.set(key, ran(args, input, code));
  return known.get(key);
}

function ran(args, input, code) {
  const done = spawnSync(command, args, { input, encoding: 'utf8', maxBuffer: 64 << 20 });
  if (done.error) throw done.error;
  if (done.status !== code) throw new Error(`drywright ${args.join(' ')} ended with ${done.status}:\n${done.stderr}`);
  return done;
}

/** The demo job. */
export const demo = () => JSON.parse(run(['demo'], '', 0).stdout);

/** The result for a job. */
export const answer = (job, more = []) =>
  JSON.parse(run(['predict', '--json', ...more, '-'], JSON.stringify(job), 0).stdout);

/** The answers to a job as the command gives them, in the form in which Screen reads them off the page. */
export const expected = (job, more = []) =>
  answer(job, more).routes.map((route) => ({
    kind: route.kind,
    title: route.title,
    sentence: route.answer.text,
    marks: Object.fromEntries(route.marks.map((mark) => [mark.label, mark.text])),
  }));

/** One limit of a route, with what would help; want is a change such as "+20%". */
export const limit = (job, route, of, want) =>
  JSON.parse(
    run(['limit', '--json', '--route', route, '--of', of, ...(want ? ['--want', want] : []), '-'], JSON.stringify(job), 0).stdout,
  );

/** What a trial in a file tells. */
export const fit = (job, kind, file, more = []) =>
  JSON.parse(run(['fit', kind, '--json', '--data', file, '--job', '-', ...more], JSON.stringify(job), 0).stdout);

/** A worked example. */
export const example = (which) => JSON.parse(run(['demo', '--which', which], '', 0).stdout);

/** Why a job is refused, one reason a line. */
export const refuse = (job) => run(['predict', '-'], JSON.stringify(job), 1).stderr;

/** Serves the page on a free port of the loopback address. */
export async function serve() {
  const child = spawn(command, ['serve', '--port', '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  for await (const line of createInterface({ input: child.stdout })) {
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(line)?.[0];
    if (!address) continue;
    return {
      address,
      async stop() {
        child.kill('SIGTERM');
        await ended;
      },
    };
  }
  throw new Error('the command did not say where it serves');
}
