import { practiceLimit } from '../catalogue/practice.ts';
import { measureBoxStep } from '../faults/box-step.ts';
import { type FlatBox, findFlatBox } from '../faults/flat-box.ts';
import { coversBlank } from '../job/covers-blank.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { addAlpha } from '../raster/add-alpha.ts';
import { channelsOf, type Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';

const AREA = practiceLimit('flat-box-area').value;

export default {
  id: 'clear-box',
  title: 'Clear the flat box behind the subject',
  reason:
    'Makes the flat ground that the check of boxes finds fully clear. Only the ground that hangs together with the rim; the subject, and what it encloses, keep every pixel, so that a soft rim keeps a trace of the ground. The box of the art shrinks to the subject, which is sized and centred without it.',
  source: ['the limits of the check of boxes'],
  answers: ['near-white-box/near-white', 'near-white-box/flat-box'],
  gentle: false,
  apply(raster, context): MendedRaster {
    let mended = raster;
    // Within a box may stand another one.
    for (;;) {
      const box = findBoxAtFault(mended, context);
      if (box === null) return { raster: mended };
      mended = clearBox(mended, box);
    }
  },
} satisfies MendDefinition;

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

function clearBox(raster: Raster, { boxPx, mask }: FlatBox): Raster {
  const clear = addAlpha(raster);
  const data = clear.data.slice();
  const step = channelsOf(clear);
  for (let at = mask.indexOf(1); at !== -1; at = mask.indexOf(1, at + 1)) {
    const y = boxPx.y + Math.floor(at / boxPx.width);
    const pixel = (y * raster.widthPx + boxPx.x + (at % boxPx.width)) * step;
    data.fill(0, pixel, pixel + step);
  }
  return { ...clear, data };
}
