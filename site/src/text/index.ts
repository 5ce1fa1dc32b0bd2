/** The words of the page that stand before anything else is loaded. What describes an input or an answer comes from the core. */
import { part } from './language';

export const text = part('main');
