// The service natively and in the platform's own runtime: both answer what the command prints. Run by `make edge-test`.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { after, before, describe, test } from 'node:test';
import { native, workerd } from './start.mjs';

const command = (...args) => execFileSync(process.env.DRYWRIGHT, args, { maxBuffer: 1 << 26, encoding: 'utf8' });
const demos = ['sleeves', 'shop', 'line', 'faster'].map((id) => [id, command('demo', '--which', id)]);
const predicted = (job, ...flags) =>
  JSON.parse(execFileSync(process.env.DRYWRIGHT, ['predict', '--json', ...flags, '-'], { input: job, maxBuffer: 1 << 26, encoding: 'utf8' }));

/**
 * How far a number of another build of the core may lie off: the marks of a run hang on where its steps end, and the last bits of
 * exp and log differ between processors, which chooses other steps now and then. A tenth of the 1e-4 that the marks are
 * computed to; texts must be equal.
 */
const bound = 1e-5;

function close(got, want, path = '') {
  if (typeof want === 'number' && typeof got === 'number') {
    assert.ok(Math.abs(got - want) <= bound * Math.max(Math.abs(want), 1e-3), `${path}: ${got} instead of ${want}`);
  } else if (Array.isArray(want)) {
    assert.equal(got?.length, want.length, `${path}: length`);
    want.forEach((v, i) => close(got[i], v, `${path}[${i}]`));
  } else if (want && typeof want === 'object') {
    assert.deepEqual(Object.keys(got ?? {}).sort(), Object.keys(want).sort(), path);
    for (const key of Object.keys(want)) close(got[key], want[key], `${path}.${key}`);
  } else assert.equal(got, want, path);
}

// How a run got there is not compared between builds: steps are counters, curves are points where the steps end.
const answers = (result) =>
  result.routes.map(({ kind, title, answer, marks, risks, amounts }) => ({ kind, title, answer, marks, risks, amounts }));

for (const start of [native, workerd]) {
  describe(start.name, () => {
    let service;
    before(async () => (service = await start()));
    after(() => service?.end());
    const post = (path, body, head = {}) =>
      fetch(service.base + path, { method: 'POST', body, headers: { 'Content-Type': 'application/json', ...head } });

    for (const [id, job] of demos) {
      test(`${id}: what the command prints`, async () => {
        const response = await post('/v1/predict', `{"job":${job}}`);
        assert.equal(response.status, 200);
        const { ok, result } = await response.json();
        assert.equal(ok, true);
        close(answers(result), answers(predicted(job)));
      });
    }

    test('US units and German are those of the command', async () => {
      const [, job] = demos[0];
      const us = await (await post('/v1/predict', `{"units":"us","job":${job}}`)).json();
      close(answers(us.result), answers(predicted(job, '--units', 'us')));
      const german = await post('/v1/predict', `{"job":${job}}`, { 'Accept-Language': 'de' });
      assert.equal(german.headers.get('Content-Language'), 'de');
      close(answers((await german.json()).result), answers(predicted(job, '--language', 'de')));
    });

    test('a job with faults comes back as a problem document', async () => {
      const job = JSON.parse(demos[0][1]);
      job.film.wet_coat_kg_per_m2 = -1;
      const response = await post('/v1/check', JSON.stringify({ job }));
      assert.equal(response.status, 422);
      assert.equal(response.headers.get('Content-Type'), 'application/problem+json');
      const problem = await response.json();
      assert.deepEqual(
        problem.faults.map((f) => f.path),
        ['film.wet_coat_kg_per_m2'],
      );
    });

    test('limits of the tunnel', async () => {
      const job = JSON.parse(demos[0][1]);
      const body = { job, limits: { study: { route: 'tunnel' }, limits: [{ variable: 'line_speed', toward: 'highest' }] } };
      const response = await post('/v1/limits', JSON.stringify(body));
      const answer = await response.json();
      assert.equal(response.status, 200, JSON.stringify(answer).slice(0, 300));
      assert.ok(answer.limits[0].value > 0);
    });

    test('many jobs at once', async () => {
      const table = 'name,film.wet_coat_kg_per_m2\nthin,0.12\nwrong,12\n';
      const response = await post('/v1/table?base=sleeves', table, { 'Content-Type': 'text/csv' });
      const lines = (await response.text()).trim().split('\n');
      assert.equal(response.status, 200);
      assert.equal(lines.length, 1 + 3 + 1);
      assert.match(lines[4], /film\.wet_coat_kg_per_m2/);
    });

    test('each request is answered for itself: what one sends, the next one does not see', async () => {
      const [, job] = demos[0];
      const alone = await (await post('/v1/predict', `{"job":${job}}`)).text();
      const other = JSON.parse(job);
      other.film.wet_coat_kg_per_m2 *= 1.3;
      await post('/v1/predict', JSON.stringify({ job: other }));
      await post('/v1/predict', '{"job":');
      assert.equal(await (await post('/v1/predict', `{"job":${job}}`)).text(), alone);
    });

    test('the page lies beside it, with the same headers', async () => {
      const response = await fetch(service.base + '/');
      assert.equal(response.status, 200);
      assert.match(await response.text(), /<!doctype html>/i);
      for (const name of ['X-Content-Type-Options', 'Referrer-Policy', 'X-Frame-Options', 'Content-Security-Policy'])
        assert.ok(response.headers.get(name), `${name} is missing`);
    });

    test('hostile requests end in the right status', async () => {
      const deep = '['.repeat(5000) + ']'.repeat(5000);
      for (const [what, got, want] of [
        ['huge', await post('/v1/predict', ' '.repeat(300 << 10)), 413],
        ['deep', await post('/v1/predict', `{"job":${deep}}`), 400],
        ['wrong type', await post('/v1/predict', '{}', { 'Content-Type': 'text/plain' }), 415],
        ['wrong method', await fetch(service.base + '/v1/predict'), 405],
        ['nowhere', await fetch(service.base + '/v1/..%2f..%2fetc/passwd'), 404],
        ['NaN', await post('/v1/predict', '{"job":{"version":1,"film":{"wet_coat_kg_per_m2":NaN}}}'), 400],
      ]) {
        assert.equal(got.status, want, what);
        await got.arrayBuffer();
      }
    });
  });
}
