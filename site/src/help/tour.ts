/** The steps of the tour, each with the part of the page that it is about. */
import type { help } from '../text/help';

export type StepName = keyof typeof help.tour.steps;

export interface Step {
  name: StepName;
  /** Where it is on the page; the first that is there. */
  at: readonly string[];
}

/** The input that the tour changes: the one that decides most. */
export const changed = 'film.wet_coat_kg_per_m2';

export const steps: readonly Step[] = [
  { name: 'question', at: ['[data-ask] fieldset'] },
  { name: 'answer', at: ['section[aria-labelledby="answers"] .cards'] },
  { name: 'lanes', at: ['section[aria-labelledby="lanes"]'] },
  { name: 'input', at: ['#in-film-wet_coat_kg_per_m2', '.inputs'] },
  { name: 'plan', at: ['section[aria-labelledby="plan"]'] },
  { name: 'detail', at: ['section[aria-labelledby="detail"]'] },
  { name: 'trial', at: ['section[aria-labelledby="trial"]', '.trial'] },
  { name: 'print', at: ['[data-print]'] },
];

export const targetOf = ({ at }: Step): HTMLElement | null => {
  for (const selector of at) {
    const found = document.querySelector<HTMLElement>(selector);
    if (found) return found;
  }
  return null;
};
