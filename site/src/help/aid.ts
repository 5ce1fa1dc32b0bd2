/** The state of the help, and the marking of terms, for every part of the page. */
import type { Job } from '../generated/contract';
import type { PlanState } from '../state/plan.svelte';
import type { Store } from '../state/shelf';
import { Asking } from './asking.svelte';
import { HelpState } from './HelpState.svelte';
import Terms from './Terms.svelte';

export interface Aid {
  readonly state: HelpState;
  readonly asking: Asking;
  readonly Terms: typeof Terms;
}

/** take gives the job in the form. */
export const aidOf = (store: Store | null, plans: PlanState, take: () => Job): Aid => ({
  state: new HelpState(store),
  asking: new Asking(plans, take),
  Terms,
});
