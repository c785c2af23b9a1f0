import { formatMillimetres } from '../geometry/length.ts';
import { middleOf, type RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToPx } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import type { PrintPicture } from './define-check.ts';
import { clipToPixels } from './edge-places.ts';
import type { Finding } from './finding.ts';

/** Where a box of the picture at print size lies: on the blank, and in the artwork as displayed. */
export function placeInPicture(
  { originMm, pixelMm }: PrintPicture,
  boxPx: RectPx,
  job: Job,
  artwork: Raster,
): NonNullable<Finding['place']> {
  const mm = {
    x: originMm.x + boxPx.x * pixelMm,
    y: originMm.y + boxPx.y * pixelMm,
    width: boxPx.width * pixelMm,
    height: boxPx.height * pixelMm,
  };
  return { mm, px: clipToPixels(rectToPx(frameOf(job), mm), artwork) };
}

/** Where the middle of a place lies, for people: `120 mm from the left and 80 mm from the top of the blank`. */
export function phrasePlace(place: Finding['place']): string {
  if (place === undefined) return 'at an unknown place';
  const { x, y } = middleOf(place.mm);
  return `${formatMillimetres(x)} from the left and ${formatMillimetres(y)} from the top of the blank`;
}
