/** A route as it is judged: at its worst spot, where it has one. */
import type { Risk, Route, SpotAnswer } from '../generated/contract';

export const worstSpot = (route: Route): SpotAnswer | undefined => route.spots.find((s) => s.worst);

/** The route with the marks of the place that decides, and that place in its title. */
export function judged(route: Route): Route {
  const spot = worstSpot(route);
  return spot ? { ...route, title: `${route.title}, ${spot.name}`, marks: spot.marks } : route;
}

/** What goes wrong on the open face and in the air, and at the worst spot beyond that. */
export function risksOf(route: Route): Risk[] {
  const known = (r: Risk): boolean => route.risks.some((o) => o.name === r.name && o.severity === r.severity);
  return [...route.risks, ...(worstSpot(route)?.risks ?? []).filter((r) => !known(r))];
}
