import { practiceLimit } from '../catalogue/practice.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { BlankInHand, Limit } from '../job/job.ts';
import { marginWithinSafe } from '../job/lines.ts';

const KEEP_OUT = practiceLimit('keep-out');

/** Where on a blank nothing that matters should lie. */
export interface UnsafeZone {
  readonly code: 'at-hole' | 'on-bevel' | 'near-edge';
  /** Of a hole what it is for. */
  readonly use: string | null;
  /** What a point must keep clear of the edge, the outline or the hole. */
  readonly limit: Limit;
  /** How far a point of the face lies within the zone, mm: 0 on its inner line, negative where it is safe. */
  readonly depth: (xMm: number, yMm: number) => number;
  /** How far a point lies from the edge, the outline or the rim of the hole, mm; 0 beyond it. */
  readonly clearance: (xMm: number, yMm: number) => number;
}

/** The zones of a blank, that in which most is lost first: holes, the bevel, the ring outside the safe line. */
export function listUnsafeZones(blank: BlankInHand): UnsafeZone[] {
  const { edge, outline, bevel, safe } = blank;
  const onFace = (depth: UnsafeZone['depth']) => (x: number, y: number) =>
    distanceInside(edge, x, y) < 0 ? -Infinity : depth(x, y);
  const holes = blank.holes.map(({ shape, use }): UnsafeZone => {
    const away = (x: number, y: number) => Math.max(0, -distanceInside(shape, x, y));
    return {
      code: 'at-hole',
      use,
      limit: KEEP_OUT,
      depth: onFace((x, y) => KEEP_OUT.value - away(x, y)),
      clearance: away,
    };
  });
  const onBevel = (x: number, y: number) => Math.max(0, distanceInside(outline, x, y));
  return [
    ...holes,
    ...(bevel === null
      ? []
      : [
          {
            code: 'on-bevel',
            use: null,
            limit: bevel,
            depth: onFace((x, y) => bevel.value - onBevel(x, y)),
            clearance: onBevel,
          } as const,
        ]),
    {
      code: 'near-edge',
      use: null,
      limit: safe,
      depth: onFace((x, y) => -marginWithinSafe(blank, x, y)),
      clearance: (x, y) => Math.max(0, distanceInside(edge, x, y)),
    },
  ];
}
