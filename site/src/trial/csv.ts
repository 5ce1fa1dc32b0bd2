/** A fit as a table for other programs: commas, decimal points, SI units in the header (RFC 4180). */
import type { ResultFit } from '../generated/contract';

const quoted = (cell: string): string => (/[",\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const row = (cells: readonly (string | number)[]): string => cells.map((c) => quoted(String(c))).join(',');

/** Points with their residuals, then the fitted curves with their bands; `what` tells the two apart. */
export function csvOf(fit: ResultFit): string {
  const { x, y, x_unit, y_unit } = fit.axes;
  const unit = (symbol: string): string => (symbol && symbol !== '1' ? ` [${symbol}]` : '');
  const head = ['what', 'series', 'line', `${x}${unit(x_unit)}`, `${y}${unit(y_unit)}`];
  const lines = [row([...head, 'curve', 'residual', 'weight', 'band low', 'band high'])];
  for (const p of fit.points)
    lines.push(row(['point', p.series, p.line || '', p.x, p.y, p.predicted, p.residual, p.weight, '', '']));
  for (const c of fit.curves)
    c.x.forEach((at, i) => {
      const [mid, low, high] = [c.y[i] ?? '', c.low[i] ?? '', c.high[i] ?? ''];
      lines.push(row(['curve', c.series, '', at, '', mid, '', '', low, high]));
    });
  return `${lines.join('\n')}\n`;
}
