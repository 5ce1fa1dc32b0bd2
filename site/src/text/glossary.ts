import { part } from './language';

export const glossary = part('glossary');
