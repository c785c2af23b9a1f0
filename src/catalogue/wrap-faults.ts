import type { RecordFault } from './record-fault.ts';
import { showValue } from './record-fault.ts';
import type { WrapRecord } from './records.ts';

/** What of a round body contradicts itself. */
export function findWrapFaults(wrap: WrapRecord): readonly RecordFault[] {
  const { bodyHeightMm, printHeightMm, clearTopMm, clearBaseMm, wayRound } = wrap;
  const faults: RecordFault[] = [];
  const add = (key: keyof WrapRecord, expected: string) =>
    faults.push({ field: `wrap.${key}`, expected, found: showValue(wrap[key]) });
  const free = bodyHeightMm - clearTopMm - clearBaseMm;
  if (printHeightMm > free + 1e-9)
    add('printHeightMm', `at most ${Math.max(0, free)}, the body less what is clear above and below`);
  const narrowest = Math.PI * Math.min(wrap.topDiameterMm, wrap.bottomDiameterMm);
  const once = `less than ${narrowest.toFixed(1)}, once round the body where it is narrowest`;
  if (wayRound === 'whole' && wrap.handleGapMm !== undefined)
    add('handleGapMm', 'none on a wrap that goes the whole way round');
  if (wayRound === 'part' && wrap.overlapMm !== undefined)
    add('overlapMm', 'none on a wrap that goes part of the way round');
  for (const key of ['overlapMm', 'handleGapMm'] as const) {
    if ((wrap[key] ?? 0) >= narrowest) add(key, once);
  }
  for (const key of ['printWidthMm', 'widestPrintMm'] as const) {
    const value = wrap[key];
    if (
      value !== undefined &&
      wayRound === 'part' &&
      value >= Math.PI * Math.max(wrap.topDiameterMm, wrap.bottomDiameterMm)
    )
      add(key, 'less than once round the body');
  }
  if (wayRound === 'part' && wrap.handleGapMm === undefined && wrap.printWidthMm === undefined)
    add('handleGapMm', 'the gap at the handle (or printWidthMm), since the wrap goes part of the way round');
  return faults;
}
