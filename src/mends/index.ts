import type { MendDefinition } from './define-mend.ts';
import intoGamut from './into-gamut.ts';

/** Every mend, in the order in which they are carried out: what is taken away first, colours last. */
export const MENDS: readonly MendDefinition[] = [intoGamut];
