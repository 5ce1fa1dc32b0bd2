/**
 * How the lines of a picture look: each style differs in colour and in dash, so that lines stay apart in grey. There are five colours;
 * from the sixth style on they come again with other dashes and with filled symbols, so that no two series look alike.
 */
const colours = 5;
const roundOf = (style: number): number => Math.floor((style - 1) / colours);

/** Dash patterns, round by round. */
const dashes: readonly (readonly string[])[] = [
  ['', '6 5', '2 3', '', '9 3 2 3'],
  ['12 3', '4 2', '1 4', '7 2', '9 3 2 3 2 3'],
  ['16 4 4 4', '3 6', '5 2 1 2', '2 6', '12 2 1 2 1 2'],
];
export const dashOf = (style: number): string =>
  dashes[roundOf(style) % dashes.length]?.[(style - 1) % colours] ?? '';
export const colourOf = (style: number): string => `var(--line-${1 + ((style - 1) % colours)})`;
/** The line of comparison (air, balance) is thin; what happens to the film is bold. */
export const weightOf = (style: number): number => (style === 4 ? 1.4 : 2.1);

/** Symbols around the origin, one for each colour; every other round they are filled. */
const symbols: readonly string[] = [
  'M-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0Z',
  'M-3.1-3.1H3.1V3.1H-3.1Z',
  'M0-4.2L3.9 2.8H-3.9Z',
  'M0-4.6L3.6 0L0 4.6L-3.6 0Z',
  'M0-4.8L1.3-1.5H4.8L2 .6L3 4.1L0 2L-3 4.1L-2 .6L-4.8-1.5H-1.3Z',
];
export const symbolPath = (style: number): string => symbols[(style - 1) % colours] ?? '';
export const filledSymbol = (style: number): boolean => roundOf(style) % 2 === 1;

/** How the lines of a moist-air chart itself look: behind whatever is drawn on them. */
export const chartLines = {
  saturation: { stroke: 'var(--ink)', 'stroke-width': 1.5 },
  humidity: { stroke: 'var(--edge)', 'stroke-width': 0.9 },
  wetBulb: { stroke: 'var(--edge)', 'stroke-width': 0.8, 'stroke-dasharray': '1 3' },
} as const;
