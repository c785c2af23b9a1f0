import type { RectMm } from '../../geometry/rectangle.ts';

/** A square badge beside the box that it numbers. */
export interface PlacedBadge {
  /** Its place in the list, from 1. */
  readonly number: number;
  readonly boxMm: RectMm;
}

/**
 * Badges of `sizeMm` at the upper left corners of boxes, outside them where there is room in the frame. One that would
 * cover an earlier one moves on to the right, then down; where nothing is free it stays on others.
 */
export function placeBadges(
  boxes: readonly { readonly number: number; readonly boxMm: RectMm }[],
  frameMm: RectMm,
  sizeMm: number,
): readonly PlacedBadge[] {
  const placed: PlacedBadge[] = [];
  const columns = Math.max(1, Math.floor(frameMm.width / sizeMm));
  const rows = Math.max(1, Math.floor(frameMm.height / sizeMm));
  for (const { number, boxMm } of boxes) {
    const startX = clamp(boxMm.x - sizeMm, frameMm.x, frameMm.x + frameMm.width - sizeMm);
    const startY = clamp(boxMm.y - sizeMm, frameMm.y, frameMm.y + frameMm.height - sizeMm);
    let badge: RectMm = { x: startX, y: startY, width: sizeMm, height: sizeMm };
    for (let tried = 0; tried < columns * rows && placed.some((one) => meet(one.boxMm, badge)); tried += 1) {
      const x = badge.x + sizeMm;
      const isBeside = x + sizeMm <= frameMm.x + frameMm.width;
      const below = isBeside ? badge.y : badge.y + sizeMm;
      const y = below + sizeMm <= frameMm.y + frameMm.height ? below : frameMm.y;
      badge = { ...badge, x: isBeside ? x : frameMm.x, y };
    }
    placed.push({ number, boxMm: badge });
  }
  return placed;
}

/** Touching does not count. */
function meet(one: RectMm, other: RectMm): boolean {
  const near = 1e-9;
  return (
    one.x + near < other.x + other.width &&
    other.x + near < one.x + one.width &&
    one.y + near < other.y + other.height &&
    other.y + near < one.y + one.height
  );
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
