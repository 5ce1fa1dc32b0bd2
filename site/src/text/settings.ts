import { part } from './language';

export const settings = part('settings');
