import { part } from './language';

export const detail = part('detail');
