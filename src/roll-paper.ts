import type { Drawing } from './geometry/drawing.ts';
import type { BlankInHand } from './job/job.ts';
import { rollLines } from './sheet/marks/roll-lines.ts';

/** What the paper of a round blank is cut and rolled by, in the frame of its boxes; nothing for a flat blank. */
export function rollOf({ wrap, bleed }: Pick<BlankInHand, 'wrap' | 'bleed'>): {
  readonly roll?: { readonly lines: Drawing; readonly isArc: boolean };
} {
  if (!wrap) return {};
  const { sector, strip, onceRoundMm } = wrap.development;
  const lines = rollLines({
    sector,
    stripMm: { width: strip.widthMm, height: strip.heightMm },
    onceRoundMm,
    overlapMm: strip.widthMm - onceRoundMm,
    bleedMm: bleed.value,
  });
  return { roll: { lines, isArc: sector !== null } };
}
