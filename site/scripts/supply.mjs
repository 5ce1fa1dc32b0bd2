// What the page, the command and the service are made of: known weaknesses of what is shipped and of what builds it, licences of all that
// is shipped, and whether the same sources give the same bytes. Run by `make supply`.
//
// Ends with an error on any finding. A check whose database cannot be reached is told as NOT CHECKED and is no error, unless
// STRICT=1 says that everything must have been checked.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

const root = new URL('../..', import.meta.url).pathname;
const site = join(root, 'site');
const { GO = 'go', NPM = 'npm', GOVULNCHECK, STRICT } = process.env;

/** Licences that ask for no more than their text, which the page shows. */
const accepted = ['ISC', 'MIT', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD'];
/** How the tools say that they could not ask. */
const unreachable =
  /no such host|dial tcp|ENOTFOUND|EAI_AGAIN|ECONN|ETIMEDOUT|audit endpoint returned an error/;

function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, encoding: 'utf8', maxBuffer: 64 << 20, ...options });
  if (done.error) throw done.error;
  return { status: done.status, words: `${done.stdout}${done.stderr}`.trim() };
}

/** The outcome of a tool that ends with 0 where it finds nothing. */
function asked({ status, words }, clean) {
  if (status === 0) return { state: 'clean', detail: clean };
  const cause = words.split('\n').find((line) => unreachable.test(line));
  if (cause) return { state: 'NOT CHECKED', detail: cause };
  return { state: 'FOUND', detail: words };
}

const goWeaknesses = (...packages) =>
  asked(run(GO, ['run', GOVULNCHECK, ...packages]), 'nothing known is called');

/** Of the packages that end in the page, and of all that build and test page or service. */
const npmWeaknesses = (folder, ...args) =>
  asked(run(NPM, ['audit', ...args], { cwd: join(root, folder) }), 'nothing known of any package');

function licences() {
  const parts = JSON.parse(readFileSync(join(site, 'dist/licences.json'), 'utf8'));
  const wrong = parts.filter((p) => !accepted.includes(p.licence) || !p.text);
  if (wrong.length === 0) return { state: 'clean', detail: `${parts.length} parts, each with its text` };
  return { state: 'FOUND', detail: wrong.map((p) => `${p.name} ${p.version}: ${p.licence}`).join('\n') };
}

/** All programs of the core: those of the page, the one inside the single file, and the service. */
const programs = [
  ...['core', 'planner', 'fitter'].map((name) => `site/public/${name}.wasm`),
  '.build/whole.wasm',
  '.build/edge/app.wasm',
];

/** Builds the programs from a copy of the sources elsewhere, from nothing that was compiled before. */
function sameBytes() {
  const folder = mkdtempSync(join(tmpdir(), 'drywright-again-'));
  try {
    for (const path of run('git', ['ls-files']).words.split('\n'))
      cpSync(join(root, path), join(folder, path), { recursive: true });
    const env = { ...process.env, GOCACHE: join(folder, 'cache'), MAKEFLAGS: '' };
    const { status, words } = run('make', programs, { cwd: folder, env });
    if (status !== 0) return { state: 'FOUND', detail: words };
    const digest = (at, file) =>
      createHash('sha256')
        .update(readFileSync(join(at, file)))
        .digest('hex')
        .slice(0, 16);
    const rows = programs.map((file) => ({
      file: basename(file),
      here: digest(root, file),
      there: digest(folder, file),
    }));
    const other = rows.filter(({ here, there }) => here !== there);
    if (other.length === 0)
      return { state: 'clean', detail: rows.map(({ file, here }) => `${file} ${here}`).join(', ') };
    return {
      state: 'FOUND',
      detail: other.map(({ file, here, there }) => `${file} differs: ${here}, ${there}`).join('\n'),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const checks = [
  ['known weaknesses, Go', () => goWeaknesses('./cure/...', './site', './wasm/edge/...')],
  ['known weaknesses, npm, shipped', () => npmWeaknesses('site', '--omit=dev')],
  ['known weaknesses, npm, page', () => npmWeaknesses('site')],
  ['known weaknesses, npm, service', () => npmWeaknesses('wasm/edge')],
  ['licences of what is shipped', licences],
  ['same sources, same bytes', sameBytes],
];

const outcomes = checks.map(([name, check]) => {
  const { state, detail } = check();
  console.log(`${name.padEnd(34)}${state.padEnd(13)}${detail}`);
  return state;
});
const unchecked = outcomes.filter((state) => state === 'NOT CHECKED').length;
if (unchecked > 0)
  console.log(
    `${unchecked} of ${checks.length} could not be asked for want of a network. Run make supply STRICT=1 where there is one.`,
  );
if (outcomes.includes('FOUND') || (unchecked > 0 && STRICT)) process.exitCode = 1;
