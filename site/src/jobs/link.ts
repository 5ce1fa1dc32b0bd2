/**
 * A job in the fragment of an address, which no server is ever sent: `#job=1.<payload>`. Form 1 is the job's JSON, whole, so that
 * the link means the same when defaults have changed; compressed as zlib's format (RFC 1950), whose checksum tells a cut or
 * altered link; in base64url (RFC 4648) without padding. What comes out is foreign matter and read like a file.
 */
import type { Job } from '../generated/contract';
import { longest } from '../state/jobfile';

/** The form that is written. */
const form = 1;
const start = /^#?job=(\d{1,6})\.(.*)$/s;

/** The longest payload that is read, and up to which a link is offered [characters]. */
export const longestPayload = 256 * 1024;
/** Mail and chat programs may cut what is longer [characters]. */
export const safeLength = 8000;

export type Unpacked =
  | { kind: 'text'; text: string }
  /** The address carries no job. */
  | { kind: 'none' }
  | { kind: 'newer'; form: number }
  /** Cut, altered, or never a link of this page. */
  | { kind: 'spoilt' }
  /** Too long, or too much once unpacked. */
  | { kind: 'large' };

/** The fragment for a job; null where it would be too long to be read again. */
export async function packJob(job: Job): Promise<string | null> {
  const bytes = new TextEncoder().encode(JSON.stringify(job));
  if (bytes.length > longest) return null;
  const packed = await all(through(bytes, new CompressionStream('deflate')), Infinity);
  const payload = packed ? toText(packed) : '';
  return payload.length > longestPayload ? null : `#job=${form}.${payload}`;
}

/** Takes a job's text out of a fragment. */
export async function unpackJob(fragment: string): Promise<Unpacked> {
  if (!/^#?job(=|%3d)/i.test(fragment)) return { kind: 'none' };
  if (fragment.length > longestPayload + 100) return { kind: 'large' };
  // Programs that pass links on wrap them, escape signs in them, or take the full stop behind them along.
  const whole = fragment
    .replace(/%3d/i, '=')
    .replace(/\s+|%20/g, '')
    .replace(/[.,;:!?)>\]'"]+$/, '');
  const [, version = '', payload = ''] = start.exec(whole) ?? [];
  if (version === '') return { kind: 'spoilt' };
  if (Number(version) > form) return { kind: 'newer', form: Number(version) };
  const bytes = Number(version) === form ? fromText(payload) : null;
  if (!bytes) return { kind: 'spoilt' };
  try {
    const found = await all(through(bytes, new DecompressionStream('deflate')), longest);
    if (!found) return { kind: 'large' };
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(found) };
  } catch {
    return { kind: 'spoilt' };
  }
}

/** The fragment with a job in a text that was pasted, if that is what it is. */
export const linkIn = (text: string): string | null =>
  /#job(?:=|%3d)\S[\s\S]*$/i.exec(text.trim())?.[0] ?? null;

function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): ReadableStream<Uint8Array> {
  return new Blob([bytes]).stream().pipeThrough(stream);
}

/** All bytes of a stream, or null as soon as they are more than `most`: a small link may unpack to gigabytes. */
async function all(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | null> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = stream.getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    length += part.value.length;
    if (length > most) {
      await reader.cancel();
      return null;
    }
    parts.push(part.value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function toText(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromText(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]+$/.test(text)) return null;
  try {
    return Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0));
  } catch {
    return null;
  }
}
