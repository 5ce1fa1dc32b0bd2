/** The words of the page in the language in use. A further language is a further file of the same shape. */
import { en } from './en';

export type Text = typeof en;
export const text: Text = en;
