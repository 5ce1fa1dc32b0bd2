/** What the costs leave out for want of a number, as inputs that can be gone to. */
import type { Catalogue, PlanCosts } from '../generated/contract';
import { templateOf } from '../state/path';

export interface Gap {
  path: string;
  label: string;
}

/** Each input once, in the order of the routes; its name is that of the table. */
export function gapsOf(costs: PlanCosts, { fields, blocks }: Pick<Catalogue, 'fields' | 'blocks'>): Gap[] {
  const paths = new Set(costs.routes.flatMap((r) => r.missing));
  return [...paths].map((path) => {
    const template = templateOf(path);
    const known = [...fields, ...blocks].find((one) => one.path === template);
    return { path, label: known?.label ?? path };
  });
}
