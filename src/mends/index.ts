import clearBox from './clear-box.ts';
import clearHaze from './clear-haze.ts';
import type { MendDefinition } from './define-mend.ts';
import dropStrays from './drop-strays.ts';
import extendEdges from './extend-edges.ts';
import freeShadow from './free-shadow.ts';
import intoGamut from './into-gamut.ts';
import liftShadows from './lift-shadows.ts';
import recolourFringe from './recolour-fringe.ts';
import whitenBox from './whiten-box.ts';

/** Every mend, in the order in which they are carried out: shapes first, colours last; haze before the specks that it joins to the design. */
export const MENDS: readonly MendDefinition[] = [
  clearHaze,
  dropStrays,
  freeShadow,
  clearBox,
  whitenBox,
  recolourFringe,
  extendEdges,
  liftShadows,
  intoGamut,
];
