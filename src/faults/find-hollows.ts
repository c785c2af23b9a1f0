import { practiceLimit } from '../catalogue/practice.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import type { Raster } from '../raster/raster.ts';
import { type AlphaCells, measureAlphaCells } from './alpha-cells.ts';
import { measureBoxStep } from './box-step.ts';
import { boxOfArea, isEnd, listCellAreas, sumUpArea, visitNeighbours } from './cell-areas.ts';
import type { PrintedArt } from './find-veils.ts';

const AREA_MM2 = practiceLimit('hollow-area').value;
/** Of an area's rim: where more of it goes on at a lower alpha, the area is the dense end of something that fades (own choice). */
const FADING_SHARE = 0.25;

/** An area that is almost, but not quite opaque. */
export interface Hollow {
  readonly boxPx: RectPx;
  readonly areaMm2: number;
  /** Mean of 255. */
  readonly alpha: number;
  /** L* by which the base shines through: of what it were if opaque, as a step from the bare base, less that of what it is. */
  readonly lightnessStep: number;
  /** The same in dE00, at least: both are measured from the bare base. */
  readonly deltaE00: number;
}

/**
 * The areas of almost opaque art over the limit, largest first, whatever they do on the base. What fades from opaque to
 * clear is none. Empty for pictures without alpha and in inks.
 */
export function findHollows(
  raster: Raster,
  { boxPx, pixelMm2, source, base }: PrintedArt,
): readonly Hollow[] {
  const cells = measureAlphaCells(raster, boxPx, Math.sqrt(pixelMm2));
  if (cells === null) return [];
  const { visible, nearly, columns } = cells;
  const mask = Uint8Array.from(visible, (seen, i) => (seen > 0 && 2 * nearly.pixels[i]! >= seen ? 1 : 0));
  const hollows: Hollow[] = [];
  for (const area of listCellAreas(mask, columns)) {
    const { pixels, alpha, overWhite, opaque } = sumUpArea(area, nearly);
    const areaMm2 = dropNoise(pixels * pixelMm2);
    if (areaMm2 < AREA_MM2 || fades(cells, area)) continue;
    const [printed, meant] = [overWhite, opaque].map((colour) => measureBoxStep(colour, source, base));
    hollows.push({
      boxPx: boxOfArea(cells, area),
      areaMm2,
      alpha,
      lightnessStep: meant!.lightnessStep - printed!.lightnessStep,
      deltaE00: Math.abs(meant!.deltaE00 - printed!.deltaE00),
    });
  }
  return hollows.sort((a, b) => b.areaMm2 - a.areaMm2);
}

function fades(cells: AlphaCells, area: readonly number[]): boolean {
  const own = new Set(area);
  let [lower, all] = [0, 0];
  visitNeighbours(cells, area, (next) => {
    if (own.has(next)) return;
    all += 1;
    if (!isEnd(cells, next) && 2 * cells.translucent[next]! >= cells.visible[next]!) lower += 1;
  });
  return lower > FADING_SHARE * all;
}
