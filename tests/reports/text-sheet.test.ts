import { describe, expect, it } from 'vitest';
import { findBlank } from '../../src/catalogue/catalogue.ts';
import { labelPiece } from '../../src/reports/piece-label.ts';
import type { ArtworkReport } from '../../src/reports/report.ts';
import { tellSheet } from '../../src/reports/text-sheet.ts';
import type { PagePlan } from '../../src/sheet/page-plan.ts';

const PAGE = { colour: false, width: 80 };
const sheet = {
  paper: 'a4',
  orientation: 'landscape',
  sizeMm: { width: 297, height: 210 },
  marks: {
    drawing: [],
    shown: [],
    dropped: [
      { mark: 'ruler', axis: 'x', reason: 'no-room' },
      { mark: 'label', reason: 'off' },
    ],
  },
} as unknown as PagePlan;

describe('tellSheet', () => {
  it('names the paper and the marks that found no room, not those that nobody wanted', () => {
    const told = tellSheet({ sheet } as ArtworkReport, PAGE).join('\n');
    expect(told).toContain('a4, lying, 297 x 210 mm');
    expect(told).toContain('ruler (x)');
    expect(told).not.toContain('label');
  });

  it('says nothing of a file that is the piece alone', () => {
    expect(tellSheet({} as ArtworkReport, PAGE)).toEqual([]);
  });
});

describe('labelPiece', () => {
  it('tells art, blank, size and recipe', () => {
    const label = labelPiece('stall/tile.png', findBlank('tile-ceramic-8in')!, { width: 100, height: 50 });
    expect(label[0]).toBe('tile.png');
    expect(label[1]).toContain('tile-ceramic-8in');
    expect(label[1]).toContain('100 x 50 mm');
    expect(label[2]).toContain('204 C');
  });

  it('leaves the press to the maker where the blank is a size alone', () => {
    const blank = { id: '90x50mm', name: 'a size', surface: 'first' } as const;
    expect(labelPiece('tag.png', blank, { width: 90, height: 50 })[2]).toContain('maker');
  });
});
