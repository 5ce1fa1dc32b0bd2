/** Trials: one file of the build, loaded behind planning. */
export { default as TrialPanel } from './TrialPanel.svelte';
