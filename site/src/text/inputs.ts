import { part } from './language';

export const inputs = part('inputs');
