import { practiceLimit } from '../catalogue/practice.ts';
import { growBox, type PointMm } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { Hole } from '../job/job.ts';

/** Distance between the points at which a zone is sampled: that of the walk along an edge. */
const SAMPLE_MM = practiceLimit('bleed-step').value;

/** Middles of cells as wide as that step that fill the holes and the keep-out round them. */
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
