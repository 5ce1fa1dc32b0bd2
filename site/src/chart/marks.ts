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
  rect,
  ruleX,
  ruleY,
  text,
  type Dot,
} from '@observablehq/plot';
