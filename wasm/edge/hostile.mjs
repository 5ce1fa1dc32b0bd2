// Hostile requests over real sockets, each with the status that it must end in and within which time. The same handler is asked
// without a socket by service/hostile_test.go, where limits can be moved.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { ask, send } from './ask.mjs';
import { command } from './pairs.mjs';

/** How long a hostile request may keep a service busy; on a machine at rest it is a hundredth of that, which is printed [ms]. */
const within = 30_000;
/** Slow ones are waited for first: for the head of a request 10 s, for all of it 20 s; and how long the end may take then [ms]. */
const patience = { head: 10_000, body: 20_000 };

const json = { 'Content-Type': 'application/json' };
const csv = { 'Content-Type': 'text/csv' };
const job = () => JSON.parse(command(['demo']).stdout);

/** The demo as a question, with a change in its job. */
function question(change = () => {}) {
  const j = job();
  change(j);
  return JSON.stringify({ job: j });
}

const nested = (n) => `{"job":${'['.repeat(n)}${']'.repeat(n)}}`;
const film = (text) => `{"job":{"version":1,"film":{"wet_coat_kg_per_m2":${text}}}}`;
const rows = (n, row = 'a,0.1') => `name,film.wet_coat_kg_per_m2\n${`${row}\n`.repeat(n)}`;
const page = (...status) => ({ status, page: true }); // answered by the files of the page, which have no problem documents

/** Name, request, status. */
const table = () => [
  ['huge', { body: ' '.repeat(300 << 10) }, 413],
  ['deep', { body: nested(5000) }, 400],
  ['33 deep', { body: nested(32) }, 400],
  ['ten thousand zones', { body: question((j) => (j.tunnel.zones = Array(10_000).fill({}))) }, 413],
  ['thirteen zones', { body: question((j) => (j.tunnel.zones = Array(13).fill(j.tunnel.zones[0]))) }, 413],
  ['ten thousand points of a night', { body: question((j) => (j.workshop.air = Array(10_000).fill({}))) }, 413],
  ['a grid that is too fine', { body: question((j) => (j.numerics = { ...j.numerics, film_cells: 1e6 })) }, 413],
  ['a budget that is too large', { body: question((j) => (j.numerics = { ...j.numerics, step_budget: 1e9 })) }, 413],
  [
    'too many resamplings',
    { path: '/v1/fit', body: JSON.stringify({ job: job(), table: 'a', trial: { kind: 'cure', bootstrap: 2000 } }) },
    413,
  ],

  ['NaN', { body: film('NaN') }, 400],
  ['NaN in quotes', { body: film('"NaN"') }, 422],
  ['infinity', { body: film('1e999') }, 422],
  ['400 digits', { body: film('9'.repeat(400)) }, 422],
  ['a negative coat', { body: film('-1') }, 422],
  ['a hexadecimal number', { body: film('0x10') }, 400],
  ['null', { body: 'null' }, 422],
  ['an empty body', {}, 400],
  ['a list', { body: '[1]' }, 400],
  ['half a document', { body: question().slice(0, 200) }, 400],
  ['two documents', { body: question() + question() }, 400],
  ['a member that does not exist', { body: '{"jib":{}}' }, 400],
  ['a member twice', { body: '{"units":"us","units":"si","job":{}}' }, 400],
  ['a member twice, once in capitals', { body: '{"job":{},"JOB":{}}' }, 400],
  ['the operation twice', { body: '{"op":"predict","op":"check","job":{}}' }, 400],
  ['a member of the job twice', { body: '{"job":{"version":1,"name":"a","name":"b"}}' }, 422],
  ['the operation of another address', { body: '{"op":"check","job":{}}' }, 400],
  ['prototype tricks', { body: '{"__proto__":{"a":1}}' }, 400],
  ['a job of a newer version', { body: '{"job":{"version":99}}' }, 422],

  ['not UTF-8', { body: Buffer.from([...Buffer.from('{"job":"'), 0xff, 0xfe, ...Buffer.from('"}')]) }, 400],
  ['UTF-16', { body: Buffer.from(`\ufeff${question()}`, 'utf16le') }, 400],
  ['Latin-1, said so', { headers: { 'Content-Type': 'application/json; charset=iso-8859-1' }, body: '{}' }, 415],
  [
    'signs that no one can see in a name',
    { path: '/v1/check', body: question((j) => (j.name = '\u0002t{x}\u001fx\u001f\u0003\u202e\u0000')) },
    [200, 422],
  ],
  ['half a character in a name', { path: '/v1/check', body: '{"job":{"version":1,"name":"\\ud800"}}' }, [200, 422]],
  ['a name of a hundred thousand letters', { path: '/v1/check', body: question((j) => (j.name = 'ä'.repeat(1e5))) }, [200, 413, 422]],

  ['a bomb of gzip', { headers: { ...json, 'Content-Encoding': 'gzip' }, body: gzipSync(Buffer.alloc(64 << 20)) }, 415],
  ['a small body in gzip', { headers: { ...json, 'Content-Encoding': 'gzip' }, body: gzipSync('{}') }, 415],
  ['an encoding that does not exist', { headers: { ...json, 'Content-Encoding': 'x-none' }, body: '{}' }, 415],
  ['text', { headers: { 'Content-Type': 'text/plain' }, body: '{}' }, 415],
  ['a form', { headers: { 'Content-Type': 'application/x-www-form-urlencoded' }, body: 'job=1' }, 415],
  ['no media type', { headers: {}, body: '{}' }, 415],
  ['a media type that is none', { headers: { 'Content-Type': ';;' }, body: '{}' }, 415],
  ['wants a picture', { headers: { ...json, Accept: 'image/png' }, body: '{}' }, 406],
  ['wants anything but JSON', { headers: { ...json, Accept: '*/*, application/json;q=0' }, body: '{}' }, 406],

  ['GET where POST', { method: 'GET', headers: {} }, 405],
  ['POST where GET', { path: '/v1/schema', body: '{}' }, 405],
  ['DELETE', { method: 'DELETE', path: '/v1/materials', headers: {} }, 405],
  ['PUT', { method: 'PUT', body: '{}' }, 405],
  ['OPTIONS from nowhere', { method: 'OPTIONS', headers: {} }, 405],

  ['an operation that does not exist', { path: '/v1/guess', body: '{}' }, 404],
  ['in capitals', { path: '/v1/PREDICT', body: '{}' }, 404],
  ['a slash too many', { path: '/v1/predict/', body: '{}' }, 404],
  ['two slashes', { path: '/v1//predict', body: '{}' }, 404],
  ['a zero byte', { path: '/v1/predict%00', body: '{}' }, 404],
  ['up and out', { method: 'GET', path: '/v1/../../etc/passwd', headers: {} }, page(404)],
  ['up and out in disguise', { method: 'GET', path: '/v1/..%2f..%2fetc/passwd', headers: {} }, 404],
  ['up and out in double disguise', { method: 'GET', path: '/v1/%252e%252e%252fetc', headers: {} }, 404],
  ['backslashes', { method: 'GET', path: '/v1/..\\..\\etc', headers: {} }, page(404)],
  ['a file beside the page', { method: 'GET', path: '/../wrangler.jsonc', headers: {} }, page(404)],
  ['an escape that is none', { method: 'GET', path: '/v1/%zz', headers: {} }, page(400, 404)],

  ['a table that is too long', { path: '/v1/table', headers: csv, body: rows(201) }, 413],
  ['a table that is too large', { path: '/v1/table', headers: csv, body: rows(1, `${'a'.repeat(300 << 10)},0.1`) }, 413],
  ['a table of no rows', { path: '/v1/table', headers: csv, body: 'name\n' }, 400],
  ['a table with ragged rows', { path: '/v1/table', headers: csv, body: rows(1, 'a') }, 400],
  ['a table with an open quote', { path: '/v1/table', headers: csv, body: rows(1, '"a') }, 400],
  ['a table of too many columns', { path: '/v1/table', headers: csv, body: `${'name,'.repeat(20_000)}\n${'a,'.repeat(20_000)}\n` }, 400],
  ['a column twice', { path: '/v1/table', headers: csv, body: 'film.wet_coat_kg_per_m2,film.wet_coat_kg_per_m2\n0.1,0.2\n' }, 400],
  ['a table in Latin-1', { path: '/v1/table', headers: csv, body: Buffer.from('name\nM\xfcller\n', 'latin1') }, 400],
  ['a table on a base that does not exist', { path: '/v1/table?base=../x', headers: csv, body: rows(1) }, 400],
  ['a table as JSON', { path: '/v1/table', body: '{}' }, 415],
];

/** Bytes that are sent and then nothing, how long that is waited for, and the statuses. */
const slow = (native) => [
  [
    'a body that does not come',
    `POST /v1/predict HTTP/1.1\r\nHost: service\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n{"job":`,
    patience.body,
    [408],
  ],
  [
    'a refused body that does not come',
    'POST /v1/predict HTTP/1.1\r\nHost: service\r\nContent-Type: text/plain\r\nContent-Length: 500\r\n\r\n{',
    patience.body,
    [408, 415],
  ],
  ['a body of which nothing comes', 'POST /v1/nowhere HTTP/1.1\r\nHost: service\r\nContent-Length: 500\r\n\r\n', patience.body, [404, 408]],
  // On the platform whoever stands before the runtime looks after this; its tools on this machine do not.
  ...(native ? [['a head that does not end', 'GET /v1/health HTTP/1.1\r\nHost: service\r\nX-Slow: ', patience.head, [408]]] : []),
];

/**
 * What only bytes can say. What has no form of HTTP is the server's to refuse: package net/http says 400, the platform's runtime 501
 * where there is no method it knows. Of a body that never ends nothing is waited for once it has said how large it is.
 */
const bytes = (native) => [
  [
    'huge, said beforehand',
    'POST /v1/predict HTTP/1.1\r\nHost: service\r\nContent-Type: application/json\r\nContent-Length: 1073741824\r\n\r\n{',
    413,
  ],
  ['what is no HTTP', 'HELLO\r\n\r\n', native ? 400 : 501],
  ['no host', 'GET /v1/health HTTP/1.1\r\n\r\n', 400],
];

export function hostile(at, native) {
  const waiting = new Map();
  let longest = 0;
  before(() => {
    for (const [name, sent, wait] of slow(native)) waiting.set(name, send(at().base, sent, wait + within));
  });

  for (const [name, { method, path = '/v1/predict', headers = json, body = '' }, expected] of table())
    test(name, async () => {
      const begun = performance.now();
      const once = () => ask(at().base, path, body || undefined, headers, method ?? 'POST');
      let { status, headers: head, text } = await once();
      // The proxy that the platform's tools put in front of the runtime may use a connection again on which a body was left.
      if (status === 503 && /restarted mid-request/.test(text)) ({ status, headers: head, text } = await once());
      const wanted = [expected?.status ?? expected].flat();
      assert.ok(wanted.includes(status), `${status} instead of ${wanted}: ${text.slice(0, 300)}`);
      if (status >= 400 && !expected.page) {
        assert.equal(head['content-type'], 'application/problem+json');
        const problem = JSON.parse(text);
        assert.equal(problem.status, status);
        assert.ok(problem.title && problem.type.startsWith('urn:drywright:problem:'), text);
      }
      assert.doesNotMatch(text, /root:|compatibility_date/);
      const took = performance.now() - begun;
      longest = Math.max(longest, took);
      assert.ok(took < within, `took ${Math.round(took)} ms`);
    });

  for (const [name, sent, wanted] of bytes(native))
    test(name, async () => {
      const { status, text } = await send(at().base, sent, within);
      assert.equal(status, wanted, text.slice(0, 300));
    });

  for (const [name, , wait, wanted] of slow(native))
    test(name, async () => {
      const { status, text, took } = await waiting.get(name);
      assert.ok(wanted.includes(status), `${status} instead of ${wanted}: ${text.slice(0, 300)}`);
      assert.ok(took < wait + within, `took ${Math.round(took)} ms`);
    });

  after(async () => {
    console.log(`  ${at().name}: ${table().length} hostile requests, the longest took ${Math.round(longest)} ms`);
    // After all of that the service answers as before.
    assert.equal((await ask(at().base, '/v1/check', question())).status, 200);
  });
}
