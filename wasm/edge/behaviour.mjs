// What a client may rely on beside the answers: languages, tables, headers, and that requests know nothing of each other.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { unlike } from './alike.mjs';
import { ask } from './ask.mjs';
import { command, complaint } from './pairs.mjs';

const demo = () => command(['demo']).stdout;

export function behaviour(at) {
  const post = (path, body, head = {}) => ask(at().base, path, body, { 'Content-Type': 'application/json', ...head });
  const get = (path, head = {}) => ask(at().base, path, undefined, head);

  test('German as the command speaks it, answers and faults', async () => {
    const job = JSON.parse(demo());
    const response = await post('/v1/predict', JSON.stringify({ job }), { 'Accept-Language': 'de-AT, en;q=0.5' });
    assert.equal(response.headers['content-language'], 'de');
    const wanted = JSON.parse(command(['predict', '--json', '--language', 'de', '-'], JSON.stringify(job)).stdout);
    assert.equal(unlike(wanted, JSON.parse(response.text).result), '');
    job.film.wet_coat_kg_per_m2 = -1;
    const refused = JSON.parse((await post('/v1/predict', JSON.stringify({ job }), { 'Accept-Language': 'de' })).text);
    assert.equal(complaint(refused.faults[0]), command(['predict', '--language', 'de', '-'], JSON.stringify(job)).stderr);
  });

  test('many jobs at once, each row with the numbers of the command', async () => {
    const table = 'name,film.wet_coat_kg_per_m2\nthin,0.12\nwrong,12\n';
    const response = await post('/v1/table?base=sleeves', table, { 'Content-Type': 'text/csv' });
    const lines = response.text.trim().split('\n');
    assert.equal(response.status, 200);
    assert.equal(lines.length, 1 + 3 + 1);
    assert.match(lines[4], /Film, Wet coat: /);
    const job = JSON.parse(demo());
    job.film.wet_coat_kg_per_m2 = 0.12;
    const { routes } = JSON.parse(command(['predict', '--json', '-'], JSON.stringify(job)).stdout);
    const column = lines[0].split(',').indexOf('ready_s');
    routes.forEach((route, i) => {
      const cells = lines[1 + i].split(',');
      assert.equal(cells[2], route.kind);
      // Cells have seven figures.
      assert.equal(cells[column], route.answer.ready_s === null ? '' : String(Number(route.answer.ready_s.toPrecision(7))));
    });
  });

  test('the example of a table for a spreadsheet', async () => {
    const jobs = readFileSync(new URL('client/jobs.csv', import.meta.url), 'utf8');
    const { status, text } = await post('/v1/table?base=sleeves', jobs, { 'Content-Type': 'text/csv' });
    assert.equal(status, 200, text);
    const [head, ...lines] = text.trim().split('\n');
    assert.ok(head.endsWith(',error'));
    assert.equal(lines.length, 3 * (jobs.trim().split('\n').length - 1)); // three routes each
    for (const line of lines) assert.ok(line.endsWith(','), `an error: ${line}`);
  });

  test('the example for curl', (t) => {
    const script = fileURLToPath(new URL('client/curl.sh', import.meta.url));
    const done = spawnSync('bash', [script, at().base], { encoding: 'utf8' });
    if (/curl: command not found/.test(done.stderr)) return t.skip('there is no curl here');
    assert.equal(done.status, 0, done.stderr);
    assert.match(done.stdout, /^predict: \d{5,} bytes\nrow,name,route,/);
  });

  test('each request is answered for itself: what one sends, the next one does not see', async () => {
    const job = demo();
    const question = `{"job":${job}}`;
    const alone = (await post('/v1/predict', question)).text;
    const other = JSON.parse(job);
    other.film.wet_coat_kg_per_m2 *= 1.3;
    const [mixed, , , again] = await Promise.all([
      post('/v1/predict', JSON.stringify({ job: other, units: 'us' }), { 'Accept-Language': 'de' }),
      post('/v1/predict', '{"job":'),
      post('/v1/check', JSON.stringify({ job: { version: 1, film: { wet_coat_kg_per_m2: -1 } } })),
      post('/v1/predict', question),
    ]);
    assert.notEqual(mixed.text, alone);
    assert.equal(again.text, alone);
    assert.equal((await post('/v1/predict', question)).text, alone);
  });

  test('what can be kept is not sent again', async () => {
    for (const path of ['/v1/materials', '/v1/demo', '/v1/schema', '/v1/openapi.json', '/v1/version']) {
      const { status, headers } = await get(path);
      assert.equal(status, 200, path);
      assert.match(headers['cache-control'], /max-age/);
      const again = await get(path, { 'If-None-Match': headers.etag });
      assert.deepEqual([again.status, again.text], [304, ''], path);
    }
  });

  test('compressed for whoever takes it', async () => {
    const [plain, small] = await Promise.all([get('/v1/materials'), get('/v1/materials', { 'Accept-Encoding': 'gzip' })]);
    assert.deepEqual([plain.headers['content-encoding'], small.headers['content-encoding']], [undefined, 'gzip']);
    assert.equal(small.text, plain.text);
  });

  test('open to pages from elsewhere only where the configuration says so', async () => {
    const { status, headers } = await post('/v1/check', `{"job":${demo()}}`, { Origin: 'https://plant.example' });
    assert.deepEqual([status, headers['access-control-allow-origin']], [200, undefined]);
  });

  test('the description lists every address, and the page lies beside the service with the same headers', async () => {
    const { openapi, paths } = JSON.parse((await get('/v1/openapi.json')).text);
    assert.equal(openapi, '3.1.0');
    assert.ok(paths['/v1/predict'].post && paths['/v1/table'].post && paths['/v1/demo'].get);
    const [page, health] = await Promise.all([get('/'), get('/v1/health')]);
    assert.equal(page.status, 200);
    assert.match(page.text, /<!doctype html>/i);
    assert.ok(health.headers['x-request-id']);
    for (const name of ['x-content-type-options', 'referrer-policy', 'x-frame-options', 'cross-origin-opener-policy', 'permissions-policy'])
      assert.equal(page.headers[name], health.headers[name] ?? 'missing', name);
    assert.match(page.headers['content-security-policy'], /frame-ancestors 'none'/);
  });
}
