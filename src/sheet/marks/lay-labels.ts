import type { RectMm } from '../../geometry/rectangle.ts';
import { distanceBetween, findNearest } from './distance-between.ts';
import { inTurn, type MarkBlock, standBlock } from './mark-block.ts';
import type { MarkPage } from './mark-page.ts';
import type { MarkRequest } from './mark-request.ts';
import { textBlock } from './text-block.ts';

/** A label is no wider than this while it has several lines. */
const WIDEST_MM = 120;

/**
 * A label for each piece, as near to it as there is room, rather below it than elsewhere. Pieces that say the same share
 * one, which says how many they are. Labels are for people at the table: they are never mirrored with the art.
 */
export function layLabels(page: MarkPage, request: MarkRequest): void {
  for (const pieces of groupByLabel(request)) {
    const [first = 0] = pieces;
    const { label } = request.pieces[first]!;
    if (label.length === 0) continue;
    const [title = '', ...rest] = label;
    const lines = pieces.length === 1 ? label : [`${pieces.length} pieces: ${title}`, ...rest];
    const bleeds = pieces.map((piece) => request.pieces[piece]!.bleedMm);
    const others = request.pieces.flatMap(({ bleedMm }, i) => (pieces.includes(i) ? [] : [bleedMm]));
    page.place(
      { mark: 'label', piece: first },
      variantsOf(lines, request.printableMm),
      (place, least) => {
        const own = findNearest(bleeds, place, labelCost);
        if (own >= least) return own;
        // Nearer to another piece it would be taken for that one's.
        const taken = others.some((bleed) => distanceBetween(bleed, place) <= own);
        return taken ? own + FOREIGN_MM : own;
      },
      { pieces },
    );
  }
}

function groupByLabel({ pieces }: MarkRequest): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  pieces.forEach(({ label }, i) => {
    const key = JSON.stringify(label);
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  return [...groups.values()];
}

/** Line by line, or all in one line for a narrow strip; lying, or standing. */
function variantsOf(lines: readonly string[], { width, height }: RectMm): Iterable<MarkBlock> {
  const oneLine = lines.join(' · ');
  return inTurn([
    () => textBlock(lines, Math.min(WIDEST_MM, width)),
    () => standBlock(textBlock(lines, Math.min(WIDEST_MM, width))),
    () => textBlock([oneLine], width),
    () => standBlock(textBlock([oneLine], height)),
  ]);
}

function labelCost(bleed: RectMm, place: RectMm): number {
  const beside = place.y < bleed.y + bleed.height ? ABOVE_MM : 0;
  // Of places as near, the one that begins where the piece does.
  return distanceBetween(bleed, place) + beside + Math.abs(place.x - bleed.x) / 1000;
}

/** A place above or beside a piece must be nearer by this much to be preferred. */
const ABOVE_MM = 5;

/** Only where there is no other room within this, or no other room at all. */
const FOREIGN_MM = 100;
