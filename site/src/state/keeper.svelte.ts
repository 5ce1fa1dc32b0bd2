/**
 * The job at hand and its place on the shelf: opens one, keeps what changes, and notices when another tab writes the same
 * job. A tab never writes over what it has not seen; it asks first.
 */
import type { Job } from '../generated/contract';
import type { AnswerState } from './answer.svelte';
import { History } from './history';
import { JobDocument } from './job.svelte';
import type { Reader } from './jobfile';
import { isBag } from './lay';
import {
  envelope,
  indexKey,
  keyOf,
  migrate,
  read,
  readIndex,
  survey,
  write,
  type Held,
  type Shelf,
  type Taken,
} from './shelf';
import type { Memo } from './slips';

const tabKey = 'drywright.at';

/** What the answer tells of the job that is kept. */
type Answering = Pick<AnswerState, 'phase' | 'good' | 'turn'>;

export class Keeper {
  readonly job: JobDocument;
  readonly shelf: Shelf;
  id = $state('');
  /** Whether the browser takes what it is to keep. */
  taken = $state<Taken>('kept');
  /** What another tab has done to the job at hand, until someone decides what is to become of it. */
  rival = $state<'changed' | 'deleted' | null>(null);
  /** Why the job last at hand could not be read. */
  unread: 'broken' | 'newer' | null = null;
  /** The job at hand as it was opened. */
  opened = $state.raw<Job | null>(null);
  /** Counts what happens to the list, for whoever shows it. */
  turns = $state(0);

  readonly #tab: Shelf;
  readonly #reader: Reader;
  readonly #answer: Answering;
  readonly #copied: (name: string) => string;
  readonly #now: () => number;
  readonly #mint: () => string;
  // Nothing is shown of it.
  // eslint-disable-next-line svelte/prefer-svelte-reactivity
  readonly #histories = new Map<string, History>();
  /** What lies under the job's key as far as this tab knows; null for nothing. */
  #seen: string | null = null;
  #held: Held | null = null;

  /**
   * shelf holds the jobs, tab what belongs to this tab alone; first is the job of a first visit, copied the name of a
   * job's copy.
   */
  constructor(
    shelf: Shelf,
    tab: Shelf,
    reader: Reader,
    first: Job,
    answer: Answering,
    copied: (name: string) => string,
    now: () => number = Date.now,
    mint: () => string = mintId,
  ) {
    [this.shelf, this.#tab, this.#reader, this.#answer] = [shelf, tab, reader, answer];
    [this.#copied, this.#now, this.#mint] = [copied, now, mint];
    migrate(shelf, mint);
    const held = this.#find();
    if (!held) this.id = mint();
    this.job = new JobDocument(held?.job ?? first, held?.slips);
    this.#begin(held);
  }

  /** The job at hand at the last visit of this tab, or of any, or the last one changed that can be read. */
  #find(): Held | null {
    const last = [this.#tab.get(tabKey), readIndex(this.shelf).at];
    for (const id of [...last, ...survey(this.shelf).map((e) => e.id)]) {
      const text = id ? this.shelf.get(keyOf(id)) : null;
      const found = read(text, this.#reader);
      if (found.kind === 'job' && id) {
        [this.id, this.#seen] = [id, text];
        return found.held;
      }
      if (found.kind === 'broken' || found.kind === 'newer') this.unread ??= found.kind;
    }
    return null;
  }

  #begin(held: Held | null): void {
    this.#held = held;
    this.rival = null;
    this.opened = this.job.snapshot();
    this.#answer.turn(held?.good ?? null);
    this.#tab.put(tabKey, this.id);
    this.turns++;
  }

  /** Keeps the job as it stands; beside a job without an answer the last one that had one. */
  put(): void {
    if (this.#disputed()) return;
    if (this.taken !== 'kept') this.taken = this.shelf.settle();
    const { phase, good: last } = this.#answer;
    const memo = this.job.memo();
    const good = phase === 'refused' || phase === 'broken' ? last : null;
    const same = this.#isHeld(memo);
    if (same && inOrder(good) === inOrder(this.#held?.good ?? null)) return;
    const count = same && this.#held ? this.#held.count : this.#count() + 1;
    const changed = same && this.#held ? this.#held.changed : this.#now();
    this.#held = { ...memo, good, count, changed };
    this.#seen = write(this.#held);
    this.taken = this.shelf.put(keyOf(this.id), this.#seen);
    this.#point(count);
  }

  /** The page is left: what is not kept yet is kept, under another key where another tab has the job's own. */
  leave(): void {
    this.put();
    if (this.rival && !this.#isHeld(this.job.memo())) this.keepCopy();
  }

  /** Turns to a job on the shelf. One that cannot be read stays where it is. */
  open(id: string): 'job' | 'none' | 'broken' | 'newer' {
    const text = this.shelf.get(keyOf(id));
    const found = read(text, this.#reader);
    if (found.kind === 'job') this.#turn(id, found.held, text, found.held);
    return found.kind;
  }

  /** Puts a job on the shelf as a new one and turns to it. */
  add(memo: Memo): void {
    this.#turn(this.#mint(), memo, null, null);
    this.put();
  }

  /** Puts a record on the shelf without turning to it. */
  store(held: Memo): void {
    const count = this.#count() + 1;
    const id = this.#mint();
    this.lay(keyOf(id), write({ ...held, good: null, count, changed: this.#now() }));
    this.#point(count);
    this.turns++;
  }

  /** Puts a record that is not at hand in its place. */
  lay(key: string, text: string): void {
    const taken = this.shelf.put(key, text);
    if (taken !== 'kept') this.taken = taken;
  }

  #turn(id: string, memo: Memo, seen: string | null, held: Held | null): void {
    this.leave();
    const history = this.#histories.get(id) ?? new History();
    this.#histories.set(this.id, this.job.turn({ job: memo.job, slips: memo.slips }, history));
    [this.id, this.#seen] = [id, seen];
    this.#begin(held);
    this.#point(this.#count());
  }

  /** Another tab has written something. */
  hear(key: string | null): void {
    if (key === null || key === keyOf(this.id)) this.#disputed();
    this.turns++;
  }

  /** Another tab's version takes the place of this one, which undo brings back. */
  takeOver(): boolean {
    const text = this.shelf.get(keyOf(this.id));
    const found = read(text, this.#reader);
    if (found.kind !== 'job') return false;
    this.job.replace(found.held.job, found.held.slips);
    [this.#seen, this.#held, this.rival] = [text, found.held, null];
    return true;
  }

  /** What stands in this tab becomes a job of its own. */
  keepCopy(): void {
    this.#histories.delete(this.id);
    this.id = this.#mint();
    this.job.set('name', this.#copied(this.job.job.name));
    this.keepOn();
  }

  /** Keeps the job though another tab has deleted it. */
  keepOn(): void {
    [this.#seen, this.#held, this.rival] = [null, null, null];
    this.#tab.put(tabKey, this.id);
    this.put();
    this.turns++;
  }

  /** Turns to another job, or to a first one where there is none, and takes the one at hand off the shelf. Gives its text. */
  letGo(next: string | null, first: Job): string | null {
    const gone = keyOf(this.id);
    [this.rival, this.#seen] = [null, this.shelf.get(gone)];
    if (next === null || this.open(next) !== 'job') this.add({ job: first, slips: [] });
    const text = this.shelf.get(gone);
    this.shelf.remove(gone);
    this.turns++;
    return text;
  }

  /** Whether the shelf holds something else than this tab has put there, or seen. */
  #disputed(): boolean {
    if (this.rival) return true;
    const text = this.shelf.get(keyOf(this.id));
    if (text === this.#seen) return false;
    const found = read(text, this.#reader);
    if (found.kind === 'job' && this.#isHeld(found.held)) {
      // The other tab has only noted what its answer was.
      [this.#seen, this.#held] = [text, found.held];
      return false;
    }
    this.rival = text === null ? 'deleted' : 'changed';
    return true;
  }

  #isHeld({ job, slips }: Memo): boolean {
    const held = this.#held && { job: this.#held.job, slips: this.#held.slips };
    return inOrder({ job, slips }) === inOrder(held);
  }

  /** Changes so far. An index that is lost is made up from the jobs. */
  #count(): number {
    const counted = readIndex(this.shelf).count;
    if (counted > 0) return counted;
    return Math.max(0, ...survey(this.shelf).map(({ found }) => Number(found?.count) || 0));
  }

  #point(count: number): void {
    this.shelf.put(indexKey, JSON.stringify({ envelope, at: this.id, count }));
  }
}

/** A text that is the same for the same values: a job from the core, the form and a file has its fields in different orders. */
const inOrder = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) =>
    isBag(one) ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1))) : one,
  );

/** Twelve letters and figures; nobody but this browser has to tell them apart. */
function mintId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((b) => (b % 36).toString(36)).join('');
}
