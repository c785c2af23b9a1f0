import type { RectMm } from '../../../src/geometry/rectangle.ts';
import { growBox } from '../../../src/geometry/rectangle.ts';
import type { MarkedPiece, MarkRequest } from '../../../src/sheet/marks/mark-request.ts';

export const TILE_LABEL = [
  'herb-tile.png',
  'Ceramic tile 8 in (tile-ceramic-8in)',
  '200 x 200 mm (7.87 x 7.87 in)',
  'Start: 204 C (400 F) for 300 s (5 min), firm pressure. The maker’s sheet wins.',
];

export function piece(outlineMm: RectMm, bleedMm: number, more: Partial<MarkedPiece> = {}): MarkedPiece {
  return {
    outlineMm,
    bleedMm: growBox(outlineMm, bleedMm),
    turn: 0,
    mirrored: true,
    label: TILE_LABEL,
    ...more,
  };
}

export function page(
  width: number,
  height: number,
  marginMm: number,
  pieces: readonly MarkedPiece[],
): MarkRequest {
  return {
    pageMm: { width, height },
    printableMm: growBox({ x: 0, y: 0, width, height }, -marginMm),
    pieces,
  };
}

/** An 8 in tile in the middle of A3. */
export const tilePage = page(297, 420, 6.35, [piece({ x: 48.5, y: 110, width: 200, height: 200 }, 3)]);

/** Slate markers, 3 by 8, from the top left of A4. */
export const tagPage = page(
  210,
  297,
  6.35,
  Array.from({ length: 24 }, (_, i) =>
    piece({ x: 9.35 + (i % 3) * 59, y: 9.35 + Math.floor(i / 3) * 29, width: 50, height: 20 }, 3, {
      label: ['tomato.png', 'Garden marker 50 x 20 mm', '204 C (400 F) for 60 s, medium pressure'],
    }),
  ),
);
