import type { Job } from '../job/job.ts';
import { TOUCH_MM } from '../job/lines.ts';
import { widthOnceRound } from '../job/wrap-places.ts';

/**
 * `repeats`: how many times round the body art fits that is too high once round; nothing for other art. As many as are
 * as high as the blank has room for, two at the least.
 */
export function placingForRound({ blank, placementMm, facesMm }: Job): { readonly repeats?: number } {
  if (!blank.wrap || facesMm.length > 0) return {};
  const span = widthOnceRound({ ...blank, wrap: blank.wrap });
  if (Math.abs(placementMm.width - span) > TOUCH_MM) return {};
  const room = blank.edge.box.height - 2 * blank.safe.value;
  if (placementMm.height <= room || room <= 0) return {};
  // Beside a handle the first and the last keep the safe inset from the ends of the paper too.
  const insets = blank.wrap.wayRound === 'part' ? 2 : 1;
  const each = (placementMm.width * room) / placementMm.height + insets * blank.safe.value;
  return { repeats: Math.max(2, Math.floor(span / each)) };
}
