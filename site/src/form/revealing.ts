/** How parts of the form that fold hear of a field that is to be shown. */
import { createContext } from 'svelte';
import type { Reveal } from './reveal.svelte';

export const [useReveal, provideReveal] = createContext<Reveal>();
