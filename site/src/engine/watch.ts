/**
 * Tells of the death of a worker, of which browsers say nothing: one that runs out of memory or is ended from outside is
 * silent for ever. The worker holds a lock of its own name while it lives; who waits for the lock gets it when it is dead.
 * From disk there are no locks, and none is watched.
 */
import type { Port } from './protocol';

let hired = 0;

/** A name that no worker of any window has. */
export const freshName = (): string => `drywright ${performance.timeOrigin} ${Math.random()} ${hired++}`;

/** The worker, which turns to its error listener when it is dead; one that was let go may do so, too. */
export function watched(worker: Worker, name: string): Port {
  const die = (): void =>
    void worker.dispatchEvent(new ErrorEvent('error', { message: 'The worker has ended.' }));
  const watch = (): void => void navigator.locks?.request(name, die).catch(() => undefined);
  // It holds its lock before it says its first word.
  worker.addEventListener('message', watch, { once: true });
  return worker as Port;
}

/** In the worker: holds its lock; settles once it does, or where there are no locks. */
export const living = (name: string): Promise<void> =>
  new Promise((held) => {
    const hold = (): Promise<never> => {
      held();
      return new Promise(() => undefined);
    };
    if (navigator.locks) navigator.locks.request(name, hold).catch(() => held());
    else held();
  });
