import { practiceLimit } from '../catalogue/practice.ts';
import { measureBoxStep } from '../faults/box-step.ts';
import { type FlatBox, findFlatBox } from '../faults/flat-box.ts';
import { coversBlank } from '../job/covers-blank.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import type { Raster } from '../raster/raster.ts';
import type { MendContext } from './define-mend.ts';

const AREA = practiceLimit('flat-box-area').value;

/** The raster after `mendOne` took away each flat box at fault: within one may stand another. The very same where there is none. */
export function mendBoxes(
  raster: Raster,
  context: MendContext,
  mendOne: (raster: Raster, box: FlatBox) => Raster,
): Raster {
  let mended = raster;
  for (;;) {
    const box = findBoxAtFault(mended, context);
    if (box === null) return mended;
    mended = mendOne(mended, box);
  }
}

/** The flat box of a raster that the check of boxes would find; null where it would find none. */
function findBoxAtFault(raster: Raster, { job, source }: MendContext): FlatBox | null {
  const placed = job(raster);
  if (placed === null) return null;
  const covers = coversBlank(placed);
  const box = findFlatBox(raster, placed.contentBoxPx, (colour) => {
    const { visible, nearWhite } = measureBoxStep(colour, source, placed.blank.baseColour);
    // A coloured ground that leaves no edge on the blank is a design.
    return visible && (nearWhite || !covers);
  });
  return box !== null && box.pixels * pixelAreaOf(placed) >= AREA - 1e-6 ? box : null;
}
