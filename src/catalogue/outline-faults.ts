import { findPolygonFault } from './polygon-faults.ts';
import type { RecordFault } from './record-fault.ts';
import { showValue } from './record-fault.ts';
import type { HoleRecord, OutlineRecord } from './records.ts';

/** What of an outline contradicts itself. `field` is where it stands in the record. */
export function findOutlineFaults(outline: OutlineRecord, field: string): readonly RecordFault[] {
  const { shape, widthMm, heightMm, cornerRadiusMm, pointsMm } = outline;
  const faults: RecordFault[] = [];
  const add = (key: string, expected: string, found: unknown) =>
    faults.push({ field: `${field}.${key}`, expected, found: showValue(found) });
  if (shape === 'circle' && widthMm !== heightMm)
    add('heightMm', `${widthMm}, the width of the circle`, heightMm);
  if (shape === 'rounded-rect') {
    const largest = Math.min(widthMm, heightMm) / 2;
    if (cornerRadiusMm === undefined || cornerRadiusMm > largest)
      add('cornerRadiusMm', `a radius of 0 to ${largest} mm, half the shorter side`, cornerRadiusMm);
  } else if (cornerRadiusMm !== undefined) {
    add('cornerRadiusMm', `none, since the shape is ${shape}`, cornerRadiusMm);
  }
  if (shape !== 'polygon') {
    if (pointsMm) add('pointsMm', `none, since the shape is ${shape}`, pointsMm);
    return faults;
  }
  const fault = findPolygonFault(pointsMm ?? [], widthMm, heightMm);
  if (fault) {
    const expected = `at least 3 distinct points in order round an outline that fills its box of ${widthMm} x ${heightMm} mm and does not cross itself`;
    faults.push({ field: `${field}.pointsMm`, expected, found: fault });
  }
  return faults;
}

/** Holes whose middle lies outside the outline's box: they can only be a wrong origin or unit. */
export function findHoleFaults(holes: readonly HoleRecord[], outline: OutlineRecord): readonly RecordFault[] {
  return holes.flatMap((hole, i) =>
    (['xMm', 'yMm'] as const)
      .map((key) => ({ key, largest: key === 'xMm' ? outline.widthMm : outline.heightMm }))
      .filter(({ key, largest }) => hole[key] < 0 || hole[key] > largest)
      .map(({ key, largest }) => ({
        field: `holes[${i}].${key}`,
        expected: `0 to ${largest} (mm from the top left of the outline box to the middle of the hole)`,
        found: showValue(hole[key]),
      })),
  );
}
