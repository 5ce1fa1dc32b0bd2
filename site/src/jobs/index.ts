/** What can be done with whole jobs, loaded once the page stands. */
export { default as JobActions } from './JobActions.svelte';
