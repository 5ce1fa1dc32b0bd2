import { hire, source } from '../engine/browser';
import type { Engine } from '../engine/client';
import { SweepEngine } from '../engine/sweep';

/** More workers than this wait for each other's memory. */
const most = 8;

/** The engine of sweeps, whose crew starts from the core that the page's engine has loaded. */
export function browserSweeps(engine: Engine): SweepEngine {
  const size = Math.min(most, Math.max(1, navigator.hardwareConcurrency || 1));
  return new SweepEngine(
    hire,
    source('planner'),
    { source: source('core'), module: () => engine.module },
    size,
  );
}
