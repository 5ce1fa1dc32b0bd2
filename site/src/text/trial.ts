import { part } from './language';

export const trial = part('trial');
