import { part } from './language';

export const jobs = part('jobs');
