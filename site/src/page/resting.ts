/**
 * When news may be said aloud: an answer that has stood for a moment, and not between two keys of someone who types slowly.
 * As long as a field that was typed into keeps the focus, the next key may still come.
 */

/** How long an answer stands before it is said, and how long the last key lies back while the field is not left [ms]. */
export const stands = 1200;
export const betweenKeys = 4000;

/** How long to wait from now. typed is when the last key came in a field that still has the focus; null: in none. */
export const restFrom = (now: number, typed: number | null): number =>
  typed === null ? stands : Math.max(stands, typed + betweenKeys - now);
