/** The page as a thing on this machine; loaded behind the first answer. */
export { default as AboutPanel } from './AboutPanel.svelte';
export { default as UpdateNotice } from './UpdateNotice.svelte';
