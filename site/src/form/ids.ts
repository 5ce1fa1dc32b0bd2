import { tick } from 'svelte';

/** The id of the control of a field; error messages and help hang on it. */
export const idOf = (path: string): string => `in-${path.replace(/[^\w]+/g, '-')}`;

/** Puts the focus on a field once whatever folds it away has been opened. */
export async function focusField(path: string): Promise<void> {
  await tick();
  const control = document.getElementById(idOf(path));
  control?.focus();
  control?.scrollIntoView({ block: 'center' });
}
