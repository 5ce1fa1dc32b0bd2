/** What every part of the page may reach: the job being edited, the answer, and the tables of the core. */
import { createContext } from 'svelte';
import type { Catalogue } from '../generated/contract';
import type { Aid } from '../help/aid';
import type { AnswerState } from '../state/answer.svelte';
import type { Complaint, FieldIndex } from '../state/faults';
import type { UnitReader } from '../state/units';
import type { JobDocument } from '../state/job.svelte';
import type { Voice } from '../text/voice';

export interface Desk {
  readonly catalogue: Catalogue;
  readonly fields: FieldIndex;
  readonly job: JobDocument;
  readonly answer: AnswerState;
  /** The compiled core, once it has been fetched, for further workers. */
  module(): WebAssembly.Module | null;
  /** Reads numbers with any unit; null until it has been loaded. */
  readonly units: UnitReader | null;
  /** All complaints about inputs, in the order of the form. */
  readonly complaints: readonly Complaint[];
  /** The complaints by path. */
  readonly wrong: ReadonlyMap<string, string>;
  /** Help, once it has come. */
  readonly help: Aid | null;
}

export const [useDesk, provideDesk] = createContext<Desk>();

/** Puts the page into another language or other units. */
export const [useVoices, provideVoices] = createContext<(next: Voice) => Promise<void>>();
