/** How prices are shown: in the currency of the job. The core, to which a currency is only a name, says "1/kWh". */
import type { Display, Field } from '../generated/contract';
import { getAt } from '../state/path';

/** The display of a field, with the job's currency in a price's unit. */
export function displayOf({ path, display }: Field, job: unknown): Display {
  const currency = /^(tariffs|costs)\./.test(path) && getAt(job, 'tariffs.currency');
  return currency && typeof currency === 'string' && display.symbol.startsWith('1/')
    ? { ...display, symbol: currency + display.symbol.slice(1) }
    : display;
}
