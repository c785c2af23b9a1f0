import { dropNoise } from '../geometry/drop-noise.ts';
import { formatMillimetres } from '../geometry/length.ts';
import { middleOf, type RectMm, type RectPx } from '../geometry/rectangle.ts';
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
  return placeOnBlank(mm, job, artwork);
}

/** The same for a box on the blank. */
export function placeOnBlank(mm: RectMm, job: Job, artwork: Raster): NonNullable<Finding['place']> {
  const px = rectToPx(frameOf(job), mm);
  const left = dropNoise(px.x);
  const top = dropNoise(px.y);
  const inside = {
    x: left,
    y: top,
    width: dropNoise(px.x + px.width) - left,
    height: dropNoise(px.y + px.height) - top,
  };
  return { mm, px: clipToPixels(inside, artwork) };
}

/** Area of so many of its pixels on the blank, mm2. */
export function areaOfPixels({ pixelMm }: PrintPicture, pixels: number): number {
  return dropNoise(pixels * pixelMm ** 2);
}

/** Where the middle of a place lies, for people: `120 mm from the left and 80 mm from the top of the blank`. */
export function phrasePlace(place: Finding['place']): string {
  if (place === undefined) return 'at an unknown place';
  const { x, y } = middleOf(place.mm);
  return `${phraseAlong(x, 'left')} and ${phraseAlong(y, 'top')} of the blank`;
}

/** Nobody measures finer than a tenth of a millimetre; a place beyond the edge has no distance below 0. */
function phraseAlong(mm: number, side: 'left' | 'top'): string {
  const rounded = Math.round(mm * 10) / 10;
  if (Math.abs(rounded) < 0.1) return `at the ${side} edge`;
  return rounded < 0
    ? `${formatMillimetres(-rounded)} beyond the ${side} edge`
    : `${formatMillimetres(rounded)} from the ${side}`;
}
