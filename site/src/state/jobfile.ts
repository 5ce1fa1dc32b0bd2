/**
 * Jobs as text in a file. A job from outside is foreign matter: what is no job, or one of a newer version, is refused;
 * anything else is laid over the defaults so that it can be mended in the form, and its values are judged by the core.
 */
import type { Catalogue, Job } from '../generated/contract';
import { isBag, lay } from './lay';
import type { Slipped } from './slips';

/** What reading needs of the catalogue; the default job states the version that this build writes. */
export type Reader = Pick<Catalogue, 'fields' | 'blocks' | 'default'>;

export type Opened =
  | { kind: 'job'; job: Job; slips: Slipped[]; left: string[] }
  | { kind: 'notJson' }
  | { kind: 'notJob' }
  | { kind: 'large' }
  | { kind: 'newer'; version: number };

/** The longest text that is read [bytes]; the core reads no more than this either. */
export const longest = 2 << 20;

export function readJob(text: string, reader: Reader): Opened {
  if (text.length > longest) return { kind: 'large' };
  try {
    return openJob(JSON.parse(text), reader);
  } catch (error) {
    if (error instanceof SyntaxError) return { kind: 'notJson' };
    if (error instanceof RangeError) return { kind: 'notJob' }; // nested deeper than any job
    throw error;
  }
}

/** Opens a document that has been parsed. */
export function openJob(document: unknown, reader: Reader): Opened {
  if (!isBag(document) || !isBag(document.film)) return { kind: 'notJob' };
  const { version } = document;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return { kind: 'notJob' };
  if (version > reader.default.version) return { kind: 'newer', version };
  const { value, slips, left } = lay(reader, '', document);
  return { kind: 'job', job: value as unknown as Job, slips, left };
}

export const writeJob = (job: Job): string => `${JSON.stringify(job, null, 2)}\n`;

/** A file name from a job's name: letters and figures of any script, the rest as hyphens. */
export function fileName(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${plain || 'job'}.drywright.json`;
}
