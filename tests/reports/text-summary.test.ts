import { describe, expect, it } from 'vitest';
import { renderTextSummary } from '../../src/reports/text-summary.ts';
import { expectGolden } from '../golden.ts';

const PAGE = { colour: false, width: 80 } as const;
const NONE = { artworks: 0, ready: 0, look: 0, stop: 0, unreadable: 0, passedOver: 0 } as const;
const ALL = { artworks: 11, ready: 5, look: 3, stop: 2, unreadable: 1, passedOver: 4 } as const;

describe('text summary', () => {
  it('reads as it did', () => {
    expectGolden('reports/summary.txt', renderTextSummary(ALL, PAGE));
    expectGolden('reports/summary.ansi', renderTextSummary(ALL, { ...PAGE, colour: true }));
  });

  it('leaves out what is zero', () => {
    expect(renderTextSummary({ ...NONE, artworks: 1, ready: 1 }, PAGE)).toBe('1 artwork: 1 READY TO PRINT\n');
    expect(renderTextSummary(NONE, PAGE)).toBe('0 artworks: none\n');
  });

  it('counts what is ready and could not be written as that', () => {
    const two = { ...NONE, artworks: 3, ready: 2, look: 1 };
    expect(renderTextSummary(two, PAGE, 1)).toBe(
      '3 artworks: 1 READY TO PRINT, 1 LOOK FIRST, 1 NOT WRITTEN\n',
    );
    expect(renderTextSummary({ ...NONE, artworks: 1, ready: 1 }, PAGE, 1)).toBe('1 artwork: 1 NOT WRITTEN\n');
  });

  it('tells how many files were passed over', () => {
    expect(renderTextSummary({ ...NONE, passedOver: 1 }, PAGE)).toContain('Passed over: 1 file ');
  });
});
