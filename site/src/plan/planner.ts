/** What the section "Plan" and the questions at the top share: one engine of sweeps, and the plans that came of it. */
import type { Engine } from '../engine/client';
import type { SweepEngine } from '../engine/sweep';
import type { Job } from '../generated/contract';
import { PlanState } from '../state/plan.svelte';
import { browserSweeps } from './crew';

export interface Planner {
  readonly sweeps: SweepEngine;
  readonly plans: PlanState;
}

/** take gives the job in the form. */
export function plannerOf(engine: Engine, take: () => Job): Planner {
  const sweeps = browserSweeps(engine);
  return { sweeps, plans: new PlanState(sweeps, take) };
}
