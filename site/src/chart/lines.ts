/** How the lines of a history look: each style differs in colour and in dash, so that lines stay apart in grey. */

/** Dash patterns by style. */
export const dashes: readonly string[] = ['', '', '6 5', '2 3', '1 0', '9 3 2 3'];
export const colourOf = (style: number): string => `var(--line-${style})`;
/** The line of comparison (air, balance) is thin; what happens to the film is bold. */
export const weightOf = (style: number): number => (style === 4 ? 1.4 : 2.1);
