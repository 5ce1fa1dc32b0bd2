/** The tests of the page read English words and SI units, as the page does after it has fetched them. */
import { choices, fetchWords, type Part } from '../../src/text/language';
import { measureIn } from '../../src/text/quantity';
import { measures } from '../fixtures/measures';

const parts: Record<Part, true> = {
  main: true,
  inputs: true,
  derive: true,
  detail: true,
  plan: true,
  trial: true,
  offline: true,
  settings: true,
  pictures: true,
  help: true,
  glossary: true,
  jobs: true,
};
if (!choices.some((c) => c.tag === 'en')) throw new Error('There is no English.');
await fetchWords(...(Object.keys(parts) as Part[]));
measureIn(measures);
