import { part } from './language';

export const pictures = part('pictures');
