import { part } from './language';

export const derive = part('derive');
