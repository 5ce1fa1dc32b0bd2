/** Planning: one file of the build, loaded behind the answers. */
export { default as PlanPanel } from './PlanPanel.svelte';
export { plannerOf, type Planner } from './planner';
