/** Helpers to numbers that people lack: one file of the build, loaded when one is asked for. */
export { default as HelperPanel } from './HelperPanel.svelte';
