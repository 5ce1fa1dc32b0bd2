/** The parts of Observable Plot that the pictures use, named one by one so that the rest stays out of the build. */
export {
  areaY,
  axisX,
  axisY,
  dot,
  gridX,
  gridY,
  line,
  plot,
  pointerX,
  rect,
  ruleX,
  ruleY,
  text,
  tip,
  type Dot,
} from '@observablehq/plot';
