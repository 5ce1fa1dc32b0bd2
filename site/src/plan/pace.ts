/** How far a sweep is, in seconds and shares. */
import type { Plan } from '../state/plan.svelte';

export interface Pace {
  elapsed: number;
  /** Of the settings; null where nobody knows how many there will be. */
  share: number | null;
  left: number | null;
}

/** Before so many settings are judged nothing can be said of the time left. */
const enough = 8;

export function paceOf(plan: Pick<Plan, 'judged' | 'total' | 'begun'>, now: number): Pace {
  const elapsed = Math.max(0, Math.floor((now - plan.begun) / 1000));
  const { judged, total } = plan;
  if (!total) return { elapsed, share: null, left: null };
  const share = Math.min(1, judged / total);
  const left =
    judged < enough ? null : Math.max(1, Math.round(((now - plan.begun) / 1000) * (1 / share - 1)));
  return { elapsed, share, left: left !== null && share < 1 ? left : null };
}
