import { part } from './language';

export const offline = part('offline');
