/** What the page can do without until the first answer stands: one file of the build, loaded behind it. */
export { UnitReader } from '../state/units';
export { default as Announcer } from './Announcer.svelte';
export { default as InView } from './InView.svelte';
export { default as Cautions } from './Cautions.svelte';
export { default as PrintSheet } from './PrintSheet.svelte';
export { default as RouteTabs } from './RouteTabs.svelte';
export { default as LaneFigure } from '../chart/LaneFigure.svelte';
