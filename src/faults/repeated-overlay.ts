import { halveCells, type LightnessCells } from '../raster/lightness-cells.ts';
import { findLattice } from './lattice.ts';
import type { LatticeSteps } from './lattice-points.ts';
import { measureLocalContrast } from './local-contrast.ts';
import { foldOnto } from './overlay-fold.ts';
import { measureSelfLikeness } from './self-likeness.ts';

/** Something half transparent that comes back again and again over art which does not. */
export interface RepeatedOverlay {
  /** From one to the next, in cells: two directions, the longer first. */
  readonly steps: LatticeSteps;
  /** How many of them lie on the picture. */
  readonly times: number;
  /** How far its strokes stand out from what is around them, L*, mean. */
  readonly strength: number;
}

/** Limits of the search, tried on real pictures with and without an overlay (tests/rates; own choice). */
const LEAST = { score: 42, sameness: 1.8, agree: 0.7, through: 0.35, behind: 1 } as const;
/**
 * At half the fineness a quarter of the work tells most art from overlays: those of `tests/rates` have 13.5 at least, nine
 * tenths of art has less (own choice: up to this no made overlay is lost, at 14 one is).
 */
const LEAST_AT_A_GLANCE = 12;
const GLANCE_CELLS = 256;
/** Shorter sides, in cells, hold no three repeats that are large enough to be told (own choice). */
const SHORTEST = 64;
/** As much as on art beside the strokes, or a little more by chance: more comes of edges of the art itself. */
const MOST_THROUGH = 2;

/**
 * The repeated overlay over a picture of cells; null where there is none. It repeats exactly, stands out over the same
 * art only a little, and lets that art through: art that repeats itself, as a pattern does, is the same at each repeat
 * on its strokes and beside them, and is none. null for sides under 64 cells too.
 */
export function findRepeatedOverlay(cells: LightnessCells): RepeatedOverlay | null {
  if (Math.min(cells.width, cells.height) < SHORTEST) return null;
  if (Math.max(cells.width, cells.height) > GLANCE_CELLS && !mayRepeat(halveCells(cells))) return null;
  const contrast = measureLocalContrast(cells);
  const lattice = findLattice(measureSelfLikeness(cells, contrast));
  if (lattice === null || lattice.score < LEAST.score) return null;
  const fold = foldOnto(lattice.steps, cells, contrast);
  const isOverlay =
    fold.sameness >= LEAST.sameness &&
    fold.agree >= LEAST.agree &&
    fold.behind >= LEAST.behind &&
    fold.through >= LEAST.through &&
    fold.through <= MOST_THROUGH;
  return isOverlay ? { steps: lattice.steps, times: fold.times, strength: fold.strength } : null;
}

function mayRepeat(cells: LightnessCells): boolean {
  const lattice = findLattice(measureSelfLikeness(cells, measureLocalContrast(cells)));
  return lattice !== null && lattice.score >= LEAST_AT_A_GLANCE;
}
