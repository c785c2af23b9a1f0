import type { Job } from './job.ts';

/** Whether the box of the art reaches the edge of the blank, or beyond it, on all four sides. */
export function coversBlank({ placementMm, blank }: Pick<Job, 'placementMm' | 'blank'>): boolean {
  const { box } = blank.edge;
  const slack = 1e-6;
  return (
    placementMm.x <= box.x + slack &&
    placementMm.y <= box.y + slack &&
    placementMm.x + placementMm.width >= box.x + box.width - slack &&
    placementMm.y + placementMm.height >= box.y + box.height - slack
  );
}
