import { practiceLimit } from '../catalogue/practice.ts';
import type { PointMm, RectMm } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { Hole } from '../job/job.ts';

/** Distance between the points at which a zone is sampled: that of the walk along an edge. */
const SAMPLE_MM = practiceLimit('bleed-step').value;

/** A rectangle with `marginMm` more on every side. */
export function growBox(box: RectMm, marginMm: number): RectMm {
  return {
    x: box.x - marginMm,
    y: box.y - marginMm,
    width: box.width + 2 * marginMm,
    height: box.height + 2 * marginMm,
  };
}

/** Middles of cells a quarter of a millimetre wide that fill the holes and the keep-out round them. */
export function sampleZones(holes: readonly Hole[], keepOutMm: number): PointMm[] {
  return holes.flatMap(({ shape }) => {
    const box = growBox(shape.box, keepOutMm);
    const points: PointMm[] = [];
    for (let y = box.y + SAMPLE_MM / 2; y < box.y + box.height; y += SAMPLE_MM) {
      for (let x = box.x + SAMPLE_MM / 2; x < box.x + box.width; x += SAMPLE_MM) {
        if (distanceInside(shape, x, y) >= -keepOutMm) points.push({ x, y });
      }
    }
    return points;
  });
}
