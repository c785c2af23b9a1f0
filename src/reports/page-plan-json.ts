import type { MarkName } from '../sheet/marks/mark-request.ts';
import type { PagePlan } from '../sheet/page-plan.ts';
import { roundNumbers, roundRect } from './round-numbers.ts';

/** The page of one artwork, as it stands in a report's document: every mark that is not on it is named. */
export function pagePlanJsonOf({ paper, orientation, sizeMm, printableMm, pieces, marks }: PagePlan): object {
  const named = ({ mark, piece, side, axis }: MarkName) => ({
    mark,
    ...(piece !== undefined && { piece }),
    ...(side && { side }),
    ...(axis && { axis }),
  });
  return {
    paper,
    orientation,
    ...roundNumbers({ widthMm: sizeMm.width, heightMm: sizeMm.height }),
    printableMm: roundRect(printableMm),
    pieces: pieces.map(({ turn, outlineMm, bleedMm }) => ({
      turn,
      outlineMm: roundRect(outlineMm),
      bleedMm: roundRect(bleedMm),
    })),
    marks: marks.shown.map((shown) => ({
      ...named(shown),
      boxMm: roundRect(shown.boxMm),
      ...(shown.lengthMm !== undefined && { lengthMm: shown.lengthMm }),
    })),
    droppedMarks: marks.dropped.map((dropped) => ({ ...named(dropped), reason: dropped.reason })),
  };
}
