import { findFamily, findRecipe, listFamilies, listRecipes } from './catalogue.ts';
import { nearestIds } from './nearest-ids.ts';
import { findHoleFaults, findOutlineFaults } from './outline-faults.ts';
import type { RecordFault } from './record-fault.ts';
import { showValue } from './record-fault.ts';
import type { BlankRecord } from './records.ts';
import { findWrapFaults } from './wrap-faults.ts';

/** What of a well-formed record contradicts itself or names what the catalogue does not have. Empty when all is well. */
export function findBlankFaults(blank: BlankRecord): readonly RecordFault[] {
  return [
    ...findBodyFaults(blank),
    ...unknownId('family', blank.family, listFamilies(), (id) => findFamily(id) !== undefined),
    ...unknownId('recipe', blank.recipe, listRecipes(), (id) => findRecipe(id) !== undefined),
  ];
}

function findBodyFaults(blank: BlankRecord): readonly RecordFault[] {
  const { outline, wrap, printable, holes } = blank;
  if (outline && wrap) {
    return [{ field: 'wrap', expected: 'an outline (flat) or a wrap (round), not both', found: 'both' }];
  }
  if (wrap) {
    return [
      ...findWrapFaults(wrap),
      ...(printable
        ? [{ field: 'printable', expected: 'none on a round body', found: showValue(printable) }]
        : []),
      ...(holes?.length
        ? [{ field: 'holes', expected: 'none on a round body', found: showValue(holes) }]
        : []),
    ];
  }
  if (!outline) {
    return [{ field: 'outline', expected: 'an outline (flat) or a wrap (round)', found: 'neither' }];
  }
  const faults = [...findOutlineFaults(outline, 'outline'), ...findHoleFaults(holes ?? [], outline)];
  if (!printable) return faults;
  for (const key of ['widthMm', 'heightMm'] as const) {
    if (printable[key] > outline[key]) {
      const expected = `at most ${outline[key]}, since the printable area lies in the outline`;
      faults.push({ field: `printable.${key}`, expected, found: showValue(printable[key]) });
    }
  }
  return [...faults, ...findOutlineFaults(printable, 'printable')];
}

function unknownId(
  field: string,
  id: string | undefined,
  records: readonly { readonly id: string }[],
  isKnown: (id: string) => boolean,
): readonly RecordFault[] {
  if (id === undefined || isKnown(id)) return [];
  const ids = records.map((record) => record.id);
  const nearest = nearestIds(id, ids, 3);
  const expected = `one of the catalogue (${nearest.length > 0 ? `nearest: ${nearest.join(', ')}` : ids.join(', ')})`;
  return [{ field, expected, found: showValue(id) }];
}
