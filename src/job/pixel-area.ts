import type { Job } from './job.ts';

/** Area of one pixel of the artwork on the blank, mm2. */
export function pixelAreaOf({
  placementMm,
  contentBoxPx,
}: Pick<Job, 'placementMm' | 'contentBoxPx'>): number {
  return (placementMm.width * placementMm.height) / (contentBoxPx.width * contentBoxPx.height);
}
