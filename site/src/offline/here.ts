import { Updates } from './updates.svelte';

const possible = import.meta.env.PROD && location.protocol.startsWith('http') && 'serviceWorker' in navigator;

/** The updates of this page, or null where there can be none: from disk, or while it is being developed. */
export const updates = possible ? new Updates(navigator.serviceWorker, () => location.reload()) : null;
void updates?.begin();
