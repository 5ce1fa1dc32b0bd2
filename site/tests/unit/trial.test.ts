import { describe, expect, it } from 'vitest';
import { fitPicture } from '../../src/chart/fits';
import type { Job, Request, Response as Reply, ResultFit, TrialForm } from '../../src/generated/contract';
import { TrialState } from '../../src/state/trial.svelte';
import { csvOf } from '../../src/trial/csv';
import { decode, lineOf, spanOfLine } from '../../src/trial/files';
import { questionOf, usual } from '../../src/trial/question';

/** A form of invented ranges in the core's shape. */
const form: TrialForm = {
  kind: 'weight',
  title: 'Coupon',
  tells: '',
  needs: '',
  routes: ['room', 'tunnel'],
  quantities: ['time', 'mass'],
  numbers: [
    {
      name: 'area_m2',
      label: 'Area',
      help: '',
      empty: '',
      default: null,
      low: 1e-4,
      high: 1,
      dimension: 'area',
      symbol: 'cm²',
      factor: 1e4,
      offset: 0,
    },
    {
      name: 'limit_K',
      label: 'Limit',
      help: '',
      empty: '',
      default: null,
      low: 250,
      high: 600,
      dimension: 'temperature',
      symbol: '°C',
      factor: 1,
      offset: -273.15,
    },
  ],
  parameters: [
    { path: 'a', label: 'A', route: 'room', value: 1, symbol: '', factor: 1, offset: 0, text: '1' },
    { path: 'b', label: 'B', route: 'tunnel', value: 1, symbol: '', factor: 1, offset: 0, text: '1' },
  ],
  isotherms: [],
  bare: false,
};

const fit = {
  axes: { x: 'time', x_unit: 's', y: 'temperature', y_unit: 'K' },
  points: [
    { series: 'A', line: 2, x: 0, y: 293.15, predicted: 292.15, residual: 1, weight: 1 },
    { series: 'B, "2"', line: 3, x: 7200, y: 313.15, predicted: 315.15, residual: -2, weight: 0.3 },
  ],
  curves: [{ series: 'A', x: [0, 7200], y: [292.15, 312.15], low: [291.15, 311.15], high: [293.15, 313.15] }],
} as unknown as ResultFit;

describe('the question of a trial', () => {
  it('takes numbers in the unit shown, and leaves out what is left empty', () => {
    const { question, slips } = questionOf(form, { ...usual(), typed: { area_m2: '200', limit_K: '' } }, []);
    expect(slips.size).toBe(0);
    expect(question).toEqual({ kind: 'weight', columns: [], route: 'room', area_m2: 0.02 });
  });

  it('says what is wrong at the field, by the range of the core', () => {
    const { slips } = questionOf(form, { ...usual(), typed: { area_m2: '0,5', limit_K: 'hot' } }, []);
    expect(slips.get('area_m2')).toMatch(/between 1 and 10000 cm²/);
    expect(slips.get('limit_K')).toMatch(/must be a number in °C/);
  });

  it('fits what was chosen in the place of the trial, and refuses to fit nothing', () => {
    const chosen = questionOf(form, { ...usual(), route: 'tunnel', parameters: ['a', 'b'] }, []);
    expect(chosen.question.parameters).toEqual(['b']);
    expect(questionOf(form, { ...usual(), parameters: ['b'] }, []).slips.has('parameters')).toBe(true);
    // A place that the job no longer has gives way to the first.
    expect(questionOf(form, { ...usual(), route: 'static_oven' }, []).question.route).toBe('room');
  });

  it('says plain, free and resampled only when asked for', () => {
    const { question } = questionOf(form, { ...usual(), robust: false, pull: false, resample: true }, []);
    expect(question).toMatchObject({ plain: true, free: true, bootstrap: 200 });
  });
});

describe('files', () => {
  it('reads the encodings that instruments write', () => {
    expect(decode(new Uint8Array([0xff, 0xfe, 0x41, 0x00, 0xb0, 0x00]))).toBe('A°');
    expect(decode(new Uint8Array([0x41, 0xc2, 0xb0]))).toBe('A°');
    expect(decode(new Uint8Array([0x41, 0xb0]))).toBe('A°');
  });

  it('finds the line of a fault in the text', () => {
    expect(lineOf('line 3')).toBe(3);
    expect(lineOf('column 3')).toBeNull();
    const text = 'a\nbb\nccc\n';
    expect(text.slice(...spanOfLine(text, 3))).toBe('ccc');
  });
});

describe('the picture and the file of a fit', () => {
  it('shows units of display, differences without an offset, outliers as such', () => {
    const picture = fitPicture(fit, 'less curve');
    expect(picture.xLabel).toBe('time (min)');
    expect(picture.yLabel).toBe('temperature (°C)');
    expect(picture.residualLabel).toBe('less curve (K)');
    expect(picture.series.map((s) => s.name)).toEqual(['A', 'B, "2"']);
    expect(picture.series[0]?.curve[1]).toMatchObject({ x: 120, low: 38, high: 40 });
    expect(picture.series[1]?.dots[0]).toMatchObject({ x: 120, y: 40, residual: -2, light: true });
  });

  it('writes points, then curves, a row each', () => {
    const lines = csvOf(fit).trimEnd().split('\n');
    expect(lines).toHaveLength(5);
    expect(lines[0]).toContain('time [s],temperature [K]');
    expect(lines[2]).toBe('point,"B, ""2""",3,7200,313.15,315.15,-2,0.3,,');
    expect(lines[4]).toBe('curve,A,,7200,,312.15,,,311.15,313.15');
  });
});

describe('the state of a trial', () => {
  const job = {} as Job;
  const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

  /** An engine that keeps its questions open until they are answered. */
  class Core {
    asked: { request: Request; answer: (reply: Partial<Reply>) => void }[] = [];
    ask(request: Request, signal?: AbortSignal): Promise<Reply> {
      return new Promise((resolve, reject) => {
        signal?.addEventListener('abort', () => reject(new DOMException('', 'AbortError')));
        const whole = { ok: true, version: 1, faults: [], message: '' };
        this.asked.push({ request, answer: (reply) => resolve({ ...whole, ...reply }) });
      });
    }
  }

  async function opened(): Promise<{ core: Core; trial: TrialState }> {
    const core = new Core();
    const trial = new TrialState(core, () => job, 0);
    void trial.learn();
    await settle();
    core.asked[0]?.answer({ forms: { most_bytes: 10, kinds: [form], quantities: [] } });
    await settle();
    return { core, trial };
  }

  it('asks one thing after the other, and a text that was overtaken leaves no trace', async () => {
    const { core, trial } = await opened();
    trial.put('a');
    await settle();
    trial.put('b');
    await settle();
    const [, , second] = core.asked;
    expect(second?.request).toMatchObject({ op: 'read_table', table: 'b' });
    second?.answer({ ok: false, faults: [{ path: 'line 1', text: 'no' }] as Reply['faults'] });
    await settle();
    expect(trial.table).toBeNull();
    expect(trial.unread).toHaveLength(1);
    expect(trial.reading).toBe(false);
  });

  it('ends a fit when it is stopped or its text changes, and the next one runs', async () => {
    const { core, trial } = await opened();
    void trial.fit();
    await settle();
    expect(trial.fate).toBe('running');
    trial.stop();
    await settle();
    expect(trial.fate).toBe('stopped');
    void trial.fit();
    await settle();
    core.asked.at(-1)?.answer({ outcome: { fit, adoption: {} } as unknown as NonNullable<Reply['outcome']> });
    await settle();
    expect(trial.fate).toBe('done');
    expect(trial.basis).toBe(trial.now());
    trial.answers.typed = { area_m2: '100' };
    expect(trial.basis).not.toBe(trial.now());
  });

  it('adopts under a name and a date, with where the data came from', async () => {
    const { core, trial } = await opened();
    trial.put('x', { kind: 'file', name: 'card.csv' });
    await settle();
    core.asked.at(-1)?.answer({});
    void trial.fit();
    await settle();
    core.asked
      .at(-1)
      ?.answer({ outcome: { fit, adoption: { points: 2 } } as unknown as NonNullable<Reply['outcome']> });
    await settle();
    const adopting = trial.adopt('Card', '12 May');
    await settle();
    expect(core.asked.at(-1)?.request.adoption).toEqual({
      points: 2,
      name: 'Card',
      date: '12 May',
      data: 'card.csv',
    });
    core.asked.at(-1)?.answer({ job });
    expect(await adopting).toBe(job);
  });
});
