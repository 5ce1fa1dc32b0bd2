/** Everything that draws, in one file of the build together with Observable Plot. */
export { drawBars } from './barDrawing';
export { drawCosts } from './costDrawing';
export { drawCurves } from './curveDrawing';
export { drawFit, drawResiduals } from './fitDrawing';
export { drawLanes } from './laneDrawing';
export { drawMoist } from './moistDrawing';
export { drawProfiles } from './profileDrawing';

/**
 * Takes out of a drawing what the page does better: Plot's own style element (styles/plot.css says the same) and the
 * labels of its inner groups, since the picture as a whole has a name and a twin as a table.
 */
export function cleaned<T extends Element>(drawn: T): T {
  for (const style of drawn.querySelectorAll('style')) style.remove();
  for (const group of drawn.querySelectorAll('g[aria-label]')) group.removeAttribute('aria-label');
  return drawn;
}
