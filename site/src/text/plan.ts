import { part } from './language';

export const plan = part('plan');
