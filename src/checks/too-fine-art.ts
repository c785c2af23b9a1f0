import { formatLength, formatSize, MM_PER_INCH } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf, TOUCH_MM } from '../job/lines.ts';
import type { Finding } from './finding.ts';

/**
 * Art that is thinner as a whole than the thinnest stroke of its family, as data; an error where it is no pixel of the
 * print thick. `widthToShowMm` is the width at which it would be thick enough, left out where the blank has no room for it.
 */
export function findTooFineArt(job: Job): Finding[] {
  const { blank, placementMm, contentBoxPx } = job;
  const { width, height } = placementMm;
  // Follows from the resolution of the print, so no record sets it; the limit only where the family names no stroke.
  const pixel = { value: MM_PER_INCH / job.ppi, from: 'derived:pixel-of-print' };
  const limit = blank.smallestStroke?.positive ?? pixel;
  const thinMm = Math.min(width, height);
  if (thinMm >= Math.max(limit.value, pixel.value) - TOUCH_MM) return [];
  const grow = Math.max(limit.value, pixel.value) / thinMm;
  const canvas = bleedBoxOf(blank);
  const fits = width * grow <= canvas.width && height * grow <= canvas.height;
  return [
    {
      code: 'too-fine',
      severity: thinMm < pixel.value - TOUCH_MM ? 'error' : 'warning',
      actual: { value: thinMm, unit: 'mm' },
      expected: { min: limit.value, unit: 'mm', from: limit.from },
      place: { px: contentBoxPx, mm: placementMm },
      facts: {
        widthMm: width,
        heightMm: height,
        pixelMm: pixel.value,
        // In tenths that a person can type, upwards so that it is enough.
        ...(fits ? { widthToShowMm: Math.ceil(width * grow * 10 - 1e-6) / 10 } : {}),
      },
    },
  ];
}

export function phraseTooFine({ severity, expected, facts }: Finding): string {
  const effect =
    severity === 'error'
      ? `that is less than one pixel of the print (${formatLength(Number(facts.pixelMm))}), and next to nothing will show`
      : `it comes out pale or broken`;
  const remedy =
    typeof facts.widthToShowMm === 'number'
      ? `Look at the unit of --width and --height, and print it at least ${formatLength(facts.widthToShowMm)} wide.`
      : 'No size of it on this blank is thick enough: look whether the file is the art that you meant.';
  return `The whole art prints ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}, thinner than the thinnest stroke that this kind of blank holds, ${formatLength(expected!.min!)}: ${effect}. ${remedy}`;
}
