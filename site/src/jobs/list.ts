/** The list of jobs on the shelf, for those who look at it: what each is called, when it was changed, whether it can be read. */
import { read, survey, type Shelf, envelope } from '../state/shelf';
import type { Keeper } from '../state/keeper.svelte';
import type { Reader } from '../state/jobfile';
import { isBag } from '../state/lay';

export interface Line {
  id: string;
  key: string;
  name: string;
  /** When it was last changed [ms since 1970]; 0 where nobody knows. */
  changed: number;
  /** What could not be read is listed too, so that it can be saved and is not lost. */
  state: 'job' | 'broken' | 'newer';
}

/** All jobs, the last changed first. */
export function linesOf(shelf: Shelf, reader: Reader): Line[] {
  return survey(shelf).flatMap(({ id, key, found }) => {
    const { kind } = read(shelf.get(key), reader);
    // The place of the first version is emptied when its job is brought over; what is left there could not be.
    if (kind === 'none' || (id === '' && kind === 'job')) return [];
    const job = isBag(found?.job) ? found.job : {};
    const name = typeof job.name === 'string' ? job.name : '';
    const changed = typeof found?.changed === 'number' && Number.isFinite(found.changed) ? found.changed : 0;
    return [{ id, key, name, changed, state: kind }];
  });
}

/** Gives a job that is not at hand another name, and touches nothing else of it. */
export function rename(keeper: Pick<Keeper, 'shelf' | 'lay'>, line: Line, name: string): void {
  const found: unknown = JSON.parse(keeper.shelf.get(line.key) ?? 'null');
  if (!isBag(found) || !isBag(found.job) || found.envelope !== envelope) return;
  keeper.lay(line.key, JSON.stringify({ ...found, job: { ...found.job, name } }));
}

/** The job to turn to when the one at hand goes: the last changed of the others. */
export function nextTo(keeper: { id: string; shelf: Shelf }, reader: Reader): string | null {
  return linesOf(keeper.shelf, reader).find((l) => l.state === 'job' && l.id !== keeper.id)?.id ?? null;
}
