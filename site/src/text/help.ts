import { part } from './language';

export const help = part('help');
