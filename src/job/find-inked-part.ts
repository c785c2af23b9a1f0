import type { RectMm, RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToMm } from './art-frame.ts';
import type { Job } from './job.ts';
import { bleedBoxOf } from './lines.ts';
import { boxOnPaper } from './paper.ts';

/** The boxes that a survey of the art has found, in its pixels. */
interface FoundBoxes {
  readonly inkBoxPx: RectPx | null;
  readonly contentBoxPx: RectPx | null;
}

/** The part of the placement that puts dye down, without white at its rim where white prints nothing; null when nothing does. */
export function findInkedPart(job: Job, { inkBoxPx, contentBoxPx }: FoundBoxes): RectMm | null {
  const box = job.blank.whiteBase ? inkBoxPx : contentBoxPx;
  return box && withCopies(job, rectToMm(frameOf(job), box));
}

/** One box for the art and its repeats. */
function withCopies({ copiesMm }: Job, { x, y, width, height }: RectMm): RectMm {
  const left = Math.min(0, ...copiesMm);
  const right = Math.max(0, ...copiesMm);
  return { x: x + left, y, width: width + right - left, height };
}

/** What of it is printed: beyond the box of the bleed line all is cut. null when nothing is left. In the frame of the paper. */
export function findPrintedPart(job: Job, found: FoundBoxes): RectMm | null {
  const inked = findInkedPart(job, found);
  if (inked === null) return null;
  const bleed = bleedBoxOf(job.blank);
  const x = Math.max(inked.x, bleed.x);
  const y = Math.max(inked.y, bleed.y);
  const width = Math.min(inked.x + inked.width, bleed.x + bleed.width) - x;
  const height = Math.min(inked.y + inked.height, bleed.y + bleed.height) - y;
  return width > 0 && height > 0 ? boxOnPaper(job.blank, { x, y, width, height }) : null;
}
