import { practiceLimit } from '../catalogue/practice.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import { frameOf, rectToMm } from './art-frame.ts';
import type { Job } from './job.ts';

/** Solid specks at least so long may be meant: confetti, snow, stars (own choice). */
const PATTERN_MM = 0.4;

/** What counts as a speck away from the design, in pixels of the artwork as this job prints it. */
export function strayLimitsFor(job: Job): {
  readonly sizePx: number;
  readonly distancePx: number;
  readonly patternPx: number;
} {
  const { width, height } = rectToMm(frameOf(job), { x: 0, y: 0, width: 1, height: 1 });
  const pixelMm = Math.sqrt(width * height);
  return {
    sizePx: inPixels(practiceLimit('stray-size').value, pixelMm),
    distancePx: inPixels(practiceLimit('stray-distance').value, pixelMm),
    patternPx: inPixels(PATTERN_MM, pixelMm),
  };
}

function inPixels(mm: number, pixelMm: number): number {
  return dropNoise(mm / pixelMm);
}
