import { expect, test } from 'vitest';
import type { Job } from '../../src/generated/contract';
import { linkIn, longestPayload, packJob, unpackJob } from '../../src/jobs/link';
import { longest, readJob, type Reader } from '../../src/state/jobfile';
import { freshBlock } from '../../src/state/lay';
import { blocks, fields } from '../fixtures/tables';
import kept from '../fixtures/store/link-1.json';
import keptLink from '../fixtures/store/link-1.txt?raw';
import { draws } from './draw';

const job = { ...freshBlock({ fields, blocks }, ''), version: 1 } as unknown as Job;
const reader: Reader = { fields, blocks, default: job };
const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

/** Compressed as the platform does it, apart from the code under test. */
async function zip(
  bytes: Uint8Array<ArrayBuffer>,
  format: CompressionFormat = 'deflate',
): Promise<Uint8Array> {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream(format));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

function linkOf(bytes: Uint8Array): string {
  const signs = btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(''));
  return `#job=1.${signs.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')}`;
}

const zipped = async (text: string): Promise<string> => linkOf(await zip(utf8(text)));

async function packed(of: unknown): Promise<string> {
  const fragment = await packJob(of as Job);
  if (fragment === null) throw new Error('too large for a link');
  return fragment;
}

test('a job survives the way through a link, every value of it', async () => {
  const found = await unpackJob(await packed(job));
  if (found.kind !== 'text') throw new Error(found.kind);
  expect(readJob(found.text, reader)).toEqual({ kind: 'job', job, slips: [], left: [] });
});

test('the form is what it says: zlib (RFC 1950) in base64url (RFC 4648), as another program packs it', async () => {
  expect(await unpackJob(await zipped('{"a":1}'))).toEqual({ kind: 'text', text: '{"a":1}' });
  expect(await packed(job)).toMatch(/^#job=1\.[\w-]+$/);
});

test('a link of form 1 means the same for ever', async () => {
  const found = await unpackJob(keptLink);
  if (found.kind !== 'text') throw new Error(found.kind);
  expect(JSON.parse(found.text)).toEqual(kept);
});

test('links that went through mail and chat are understood', async () => {
  const whole = await packed(job);
  const middle = Math.floor(whole.length / 2);
  const wrapped = `${whole.slice(0, middle)}\n ${whole.slice(middle)}`;
  for (const link of [whole, whole.slice(1), wrapped, `${whole}.`, `${whole})`, whole.replace('=', '%3D')]) {
    expect((await unpackJob(link)).kind, link).toBe('text');
  }
  expect(linkIn(`See https://example.invalid/page/${whole}`)).toBe(whole);
  expect(linkIn('no link')).toBeNull();
});

test('what is no link of a job, or no whole one, is told apart', async () => {
  const kind = async (fragment: string): Promise<string> => (await unpackJob(fragment)).kind;
  expect(await kind('')).toBe('none');
  expect(await kind('#answers')).toBe('none');
  expect(await kind('#jobs')).toBe('none');
  expect(await unpackJob('#job=2.abc')).toEqual({ kind: 'newer', form: 2 });
  expect(await kind('#job=0.abc')).toBe('spoilt');
  expect(await kind('#job=')).toBe('spoilt');
  expect(await kind('#job=1.')).toBe('spoilt');
  expect(await kind('#job=1.ab*c')).toBe('spoilt');
  expect(await kind(linkOf(await zip(utf8('{"a":1}'), 'deflate-raw')))).toBe('spoilt');
  expect(await kind(linkOf(await zip(Uint8Array.of(0x22, 0xff, 0x22))))).toBe('spoilt'); // not UTF-8
  expect(await kind(`#job=1.${'A'.repeat(1 << 20)}`)).toBe('large');
});

test('a small link that unpacks to gigabytes is given up at the size of a job', async () => {
  const bomb = await zip(new Uint8Array(64 << 20));
  expect(bomb.length).toBeLessThan(longestPayload / 2);
  expect(await unpackJob(linkOf(bomb))).toEqual({ kind: 'large' });
  const just = ' '.repeat(longest);
  expect((await unpackJob(await zipped(just))).kind).toBe('text');
  expect((await unpackJob(await zipped(`${just} `))).kind).toBe('large');
});

test('a job too large for a link is not offered as one', async () => {
  let noise = '';
  for (const draw of draws(30_000)) noise += draw.next().toString(36) + draw.next().toString(36);
  expect(await packJob({ ...job, note: noise } as Job)).toBeNull();
  expect(await packJob({ ...job, note: 'x'.repeat(longest) } as Job)).toBeNull();
});

test('property: any JSON comes back as it went', async () => {
  for (const draw of draws(300)) {
    const value = draw.json(4);
    const found = await unpackJob(await packed(value));
    expect(found, draw.name).toEqual({ kind: 'text', text: JSON.stringify(value) });
  }
});

test('property: a link that was cut, or altered in one sign, is never taken for another job', async () => {
  const whole = await packed({ ...job, name: 'Invented, for cutting' });
  const text = JSON.stringify({ ...job, name: 'Invented, for cutting' });
  const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
  const payloadAt = '#job=1.'.length;
  for (let length = payloadAt; length < whole.length; length++) {
    expect((await unpackJob(whole.slice(0, length))).kind, `cut to ${length}`).toBe('spoilt');
  }
  for (const draw of draws(600)) {
    const at = payloadAt + draw.below(whole.length - payloadAt);
    const altered = whole.slice(0, at) + draw.pick([...alphabet]) + whole.slice(at + 1);
    const found = await unpackJob(altered);
    // The last sign may carry bits that belong to no byte.
    if (found.kind === 'text') expect(found.text, draw.name).toBe(text);
    else expect(['spoilt', 'large'], draw.name).toContain(found.kind);
  }
});

test('property: whatever stands in an address or in what it unpacks to, reading ends in one of the known ways', async () => {
  const kinds = ['text', 'none', 'newer', 'spoilt', 'large'];
  for (const draw of draws(600)) {
    const fragment = await draw.pick<() => string | Promise<string>>([
      () => `#job=${draw.text(20)}`,
      () => `#job=1.${draw.text(20)}`,
      () => linkOf(draw.bytes(200)),
      async () => linkOf(await zip(draw.bytes(200))),
      () => zipped(JSON.stringify(draw.json(4))),
      () =>
        zipped(
          JSON.stringify({
            version: draw.pick([1, 1, 2, '1']),
            film: draw.json(2),
            ...(draw.json(2) as object),
          }),
        ),
    ])();
    const found = await unpackJob(fragment);
    expect(kinds, draw.name).toContain(found.kind);
    if (found.kind !== 'text') continue;
    expect(['job', 'notJson', 'notJob', 'newer', 'large'], draw.name).toContain(
      readJob(found.text, reader).kind,
    );
  }
});

test('property: a job whose text was altered before it was packed opens as a job that comes back, or is refused', async () => {
  const whole = JSON.stringify(kept);
  for (const draw of draws(600)) {
    let text = whole;
    for (let n = 1 + draw.below(4); n > 0; n--) {
      const at = draw.below(text.length);
      const end = at + draw.below(draw.pick([2, 2, 8, 200]));
      const put = draw.pick([
        () => '',
        () => draw.pick([...'{}[]",:-.e0 9\\']),
        () => draw.pick(['null', '1e999', '-1', '"NaN"', '[]', '{}', '"__proto__"', 'true', '1e-320']),
        () => text.slice(at, end) + text.slice(at, end),
        () => draw.text(6),
      ])();
      text = text.slice(0, at) + put + text.slice(end);
    }
    const sent = new TextDecoder().decode(utf8(text)); // a lone surrogate goes as its replacement
    expect(await unpackJob(await zipped(text)), draw.name).toEqual({ kind: 'text', text: sent });
    const opened = readJob(sent, reader);
    expect(['job', 'notJson', 'notJob', 'newer'], draw.name).toContain(opened.kind);
    if (opened.kind !== 'job') continue;
    const again = await unpackJob(await packed(opened.job));
    if (again.kind !== 'text') throw new Error(`${draw.name}: ${again.kind}`);
    expect(readJob(again.text, reader), draw.name).toMatchObject({ kind: 'job', job: opened.job });
  }
});
