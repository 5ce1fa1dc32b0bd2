/** Help: the questions, the words of the trade, the tour, limits and accuracy. One file of the build, behind the answers. */
export { default as Ask } from './Ask.svelte';
export { default as Asked } from './Asked.svelte';
export { default as HelpMenu } from './HelpMenu.svelte';
export { default as Overlays } from './Overlays.svelte';
export { aidOf } from './aid';
