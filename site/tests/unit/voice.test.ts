/** The language and the units that the page speaks in: the first choice, and a change on the way. */
import { afterEach, expect, test, vi } from 'vitest';
import { fieldText, parseNumber } from '../../src/state/number';
import { usualText } from '../../src/state/display';
import { text } from '../../src/text';
import { bestOf, inside } from '../../src/text/language';
import { duration, number, percent, temperature } from '../../src/text/quantity';
import { another, firstVoice, remember, voice } from '../../src/text/voice';
import { celsius } from '../fixtures/tables';

const page = { documentElement: { lang: '' } };
vi.stubGlobal('document', page);

afterEach(async () => (await another({ language: 'en', units: 'si' }))());

test('the first of the wanted languages that there is', () => {
  expect(bestOf(['de-AT', 'en'])).toBe('de');
  expect(bestOf(['fr-CA', 'de'])).toBe('de');
  expect(bestOf(['xx', 'en-GB', 'de'])).toBe('en');
  expect(bestOf([])).toBe('en');
});

test('American units take an American clock as well', () => {
  expect(firstVoice(['en-US'], 'America/Chicago')).toEqual({ language: 'en', units: 'us' });
  expect(firstVoice(['en-US'], 'Europe/Vienna').units).toBe('si');
  expect(firstVoice(['en-CA'], 'America/Toronto').units).toBe('si');
  expect(firstVoice(['de-DE'], 'Europe/Berlin')).toEqual({ language: 'de', units: 'si' });
});

test('a choice that is kept goes before the browser’s, one that there is no more does not', () => {
  const store = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => store.get(key) ?? null,
    setItem: (key: string, value: string) => void store.set(key, value),
  });
  try {
    remember({ language: 'de', units: 'us' });
    expect(firstVoice(['en-GB'], 'Europe/London')).toEqual({ language: 'de', units: 'us' });
    for (const key of store.keys()) store.set(key, 'klingon');
    expect(firstVoice(['en-GB'], 'Europe/London')).toEqual({ language: 'en', units: 'si' });
  } finally {
    vi.unstubAllGlobals();
    vi.stubGlobal('document', page);
  }
});

test('words, numbers and fields follow a change of language', async () => {
  const { answers } = text;
  expect(answers.title).toBe('Answers');
  const change = await another({ language: 'de', units: 'si' });
  expect(text.answers.title, 'not before it is wanted').toBe('Answers');
  change();
  expect(voice().language).toBe('de');
  expect(page.documentElement.lang).toBe('de');
  expect(text.answers.title).toBe('Antworten');
  expect(text.answers.dangers({ n: 1 })).toBe('1 Gefahr');
  expect(text.form.item({ item: 'Zone', n: 2 })).toBe('Zone 2');
  expect([duration(8130), number(-0.25), percent(0.125)]).toEqual(['2,26 h', '−0,25', '12,5 %']);
  expect(temperature(294.65)).toBe('21,5 °C');
  expect([fieldText(1.5), fieldText(-40), fieldText(1.5e-7)]).toEqual(['1,5', '-40', '1,5e-7']);
  expect(usualText(288.15, 298.65, celsius)).toBe('15 – 25,5 °C');
  expect(inside('Zone'), 'nouns keep their capital').toBe('Zone');
});

test('in German a comma and a point are both understood', async () => {
  (await another({ language: 'de', units: 'si' }))();
  for (const typed of ['1,5', '1.5', fieldText(1.5)])
    expect(parseNumber(typed)).toEqual({ kind: 'number', value: 1.5 });
});

test('English labels begin with a small letter inside a sentence', () => {
  expect(inside('Zone')).toBe('zone');
});
