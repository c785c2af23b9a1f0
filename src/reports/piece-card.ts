import { formatLength, formatSize } from '../geometry/length.ts';
import { listFound } from './list-found.ts';
import type { Row } from './press-card-rows.ts';
import type { ArtworkReport } from './report.ts';
import { VERDICT_WORDS } from './verdict-words.ts';

/** Free room of the blank round the art, in mm; negative where the art hangs over. */
export interface RoomMm {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** From the art's visible part to the sides of the blank's outline box, seen from the front; null where nothing is printed. */
export function roomOf({ placementMm, blank }: ArtworkReport): RoomMm | null {
  if (placementMm === null) return null;
  const { x, y, width, height } = placementMm;
  return {
    left: x,
    top: y,
    right: blank.widthMm - x - width,
    bottom: blank.heightMm - y - height,
  };
}

/** What to hold against the blank and the paper before the press closes, as rows of a label and a text. */
export function pieceRows(report: ArtworkReport): readonly Row[] {
  const { artwork, blank, placementMm, status, outcomes, development } = report;
  const room = roomOf(report);
  const ticks = `${formatLength(blank.widthMm / 2)} from the left and right, ${formatLength(blank.heightMm / 2)} from the top and bottom`;
  return [
    ['art', artwork.path],
    ['verdict', `${VERDICT_WORDS[status]}, ${tellCount(listFound(outcomes).length)}`],
    [development ? 'paper' : 'blank', formatSize(blank.widthMm, blank.heightMm)],
    ...(placementMm && room
      ? [
          ['art on it', formatSize(placementMm.width, placementMm.height)] as const,
          [
            'bare rim',
            `left ${tellRoom(room.left)}, right ${tellRoom(room.right)}, top ${tellRoom(room.top)}, bottom ${tellRoom(room.bottom)}`,
          ] as const,
        ]
      : [['art on it', 'nothing is visible'] as const]),
    ['centre ticks', `${ticks}: the ticks of the paper lie there`],
  ];
}

function tellCount(count: number): string {
  return count === 0 ? 'no findings' : count === 1 ? '1 finding' : `${count} findings`;
}

function tellRoom(mm: number): string {
  // A hundredth is less than any ruler shows.
  if (Math.abs(mm) < 0.005) return 'none';
  return mm > 0 ? formatLength(mm) : `${formatLength(-mm)} over the edge`;
}
