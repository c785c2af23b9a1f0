import { listSheets } from '../catalogue/find-sheet.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';
import type { PrinterRecord } from '../catalogue/printer-record.ts';
import { showValue } from '../catalogue/record-fault.ts';
import type { PlacedFault } from '../catalogue/schema-faults.ts';
import { defaultMarginsMm } from './default-margins.ts';
import { findPaper } from './paper.ts';

/** What is wrong with a record whose fields are right each by itself: a paper that is none, margins that leave no room. */
export function findPrinterFaults(record: PrinterRecord): readonly PlacedFault[] {
  const paper = findPaper(record.paper);
  if (paper === null) {
    const ids = listSheets().map(({ id }) => id);
    const near = nearestIds(record.paper, ids, 1);
    const expected = `a sheet (${near.length > 0 ? `meant ${near[0]}?` : ids.join(', ')}) or a size such as 200x300mm`;
    return [{ path: ['paper'], field: 'paper', expected, found: showValue(record.paper) }];
  }
  const { left, right, lead, trail } = record.marginsMm ?? defaultMarginsMm();
  const field = 'marginsMm';
  const faults: PlacedFault[] = [];
  if (left + right >= paper.widthMm)
    faults.push({
      path: [field, 'left'],
      field,
      expected: `left and right together below the ${paper.widthMm} mm of the paper`,
      found: `${left + right}`,
    });
  if (lead + trail >= paper.heightMm)
    faults.push({
      path: [field, 'lead'],
      field,
      expected: `lead and trail together below the ${paper.heightMm} mm of the paper`,
      found: `${lead + trail}`,
    });
  return faults;
}
