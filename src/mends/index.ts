import type { MendDefinition } from './define-mend.ts';
import dropStrays from './drop-strays.ts';
import extendEdges from './extend-edges.ts';
import intoGamut from './into-gamut.ts';
import whitenBox from './whiten-box.ts';

/** Every mend, in the order in which they are carried out: shapes first, colours last. */
export const MENDS: readonly MendDefinition[] = [dropStrays, whitenBox, extendEdges, intoGamut];
