import { developBand, type RoundBand } from '../../../src/geometry/development.ts';
import { boxAround, boxOfSector, growSector } from '../../../src/geometry/sector.ts';
import { rollLines } from '../../../src/sheet/marks/roll-lines.ts';
import type { SheetPiece } from '../../../src/sheet/several/sheet-piece.ts';
import { PIXEL_MM } from './sheets-law.ts';

const BLEED_MM = 3;

/** The paper of a tapered body as a sheet takes it, once round with 3 mm of overlap. */
export function arcPieceOf(band: RoundBand, more: Partial<SheetPiece> = {}): SheetPiece {
  const overlapMm = 3;
  const { sector, strip, onceRoundMm } = developBand(band, { overlapMm });
  if (!sector) throw new Error('Expected a tapered body.');
  const bleedMm = boxAround(sector, BLEED_MM);
  return {
    outlineMm: boxOfSector(sector),
    bleedMm,
    printedMm: bleedMm,
    widthPx: Math.round(bleedMm.width / PIXEL_MM),
    heightPx: Math.round(bleedMm.height / PIXEL_MM),
    mirrored: true,
    label: ['seedlings.png'],
    mayTurn: false,
    group: 0,
    arc: growSector(sector, BLEED_MM),
    roll: {
      lines: rollLines({
        sector,
        stripMm: { width: strip.widthMm, height: strip.heightMm },
        onceRoundMm,
        overlapMm,
        bleedMm: BLEED_MM,
      }),
      isArc: true,
    },
    ...more,
  };
}

/** The same pieces as they were packed before: by their boxes alone. */
export function byBoxes(pieces: readonly SheetPiece[]): readonly SheetPiece[] {
  return pieces.map(({ arc: _, ...piece }) => piece);
}
