import type { FilledPage } from './pack-groups.ts';
import type { SheetPiece } from './sheet-piece.ts';

/**
 * A plan of pages that plans those that are filled alike once: most pages of many copies are, and their marks, of which the
 * lettering is large, are the same. What is planned may depend on what a piece is and where it lies, not on which it is.
 */
export function shareAlike<Plan>(
  pieces: readonly SheetPiece[],
  plan: (page: FilledPage) => Plan,
): (page: FilledPage) => Plan {
  const numberOf = numberAlike();
  const plans = new Map<string, Plan>();
  return (filled) => {
    const { way, nestGapMm, members } = filled;
    const places = members.map(({ piece, turn, middleMm: { x, y } }) => [
      numberOf(pieces[piece]!),
      turn,
      x,
      y,
    ]);
    const key = JSON.stringify([way.page, way.scaleCorrection, nestGapMm, places]);
    const known = plans.get(key) ?? plan(filled);
    plans.set(key, known);
    return known;
  };
}

/** A number that pieces share which are told apart by their group alone: copies are made of the very same boxes and lines. */
function numberAlike(): (piece: SheetPiece) => number {
  const byOutline = new Map<
    SheetPiece['outlineMm'],
    { readonly piece: SheetPiece; readonly number: number }[]
  >();
  let count = 0;
  return (piece) => {
    const known = byOutline.get(piece.outlineMm) ?? [];
    const same = known.find((other) => isAlike(other.piece, piece));
    if (same) return same.number;
    count += 1;
    byOutline.set(piece.outlineMm, [...known, { piece, number: count }]);
    return count;
  };
}

function isAlike(one: SheetPiece, other: SheetPiece): boolean {
  const names = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<keyof SheetPiece>;
  return [...names].every((name) => name === 'group' || one[name] === other[name]);
}
