import { describe, expect, it } from 'vitest';
import { planSheets } from '../../../src/sheet/several/plan-sheets.ts';
import type { SheetPiece } from '../../../src/sheet/several/sheet-piece.ts';
import { A4, copies, PLAIN, pieceOf } from './sheets-law.ts';

const grouped = (pieces: readonly SheetPiece[]) => pieces.map((piece, group) => ({ ...piece, group }));

describe('planSheets', () => {
  it('plans pages of copies that are filled alike once, and lays each copy once', () => {
    const { sheets } = planSheets(copies(10_000, pieceOf(50, 30)), A4, PLAIN);
    expect(new Set(sheets.map(({ page }) => page)).size).toBe(2);
    const laid = sheets.flatMap(({ pieces }) => pieces).sort((one, other) => one - other);
    expect(laid).toEqual([...laid.keys()]);
    expect(laid).toHaveLength(10_000);
    for (const { page, pieces } of sheets) expect(page.pieces).toHaveLength(pieces.length);
  });

  it('plans what differs in anything but its group apart, as if nothing were shared', () => {
    const tag = pieceOf(50, 30);
    const differing = [
      tag,
      { ...tag, label: ['mint.png'] },
      { ...tag, mirrored: false },
      { ...tag, mayTurn: true },
    ];
    const pieces = grouped(differing.flatMap((piece) => copies(40, piece)));
    // Each with boxes of its own: nothing is known to be alike.
    const apart = pieces.map((piece) => ({ ...piece, outlineMm: { ...piece.outlineMm } }));
    const shared = planSheets(pieces, A4, PLAIN);
    expect(shared).toEqual(planSheets(apart, A4, PLAIN));
    expect(new Set(shared.sheets.map(({ page }) => page)).size).toBeLessThan(shared.sheets.length);
  });
});
