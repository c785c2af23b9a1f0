import { describe, expect, it } from 'vitest';
import { findPageLimits } from '../../src/printers/page-limits.ts';

const PRINTER = {
  marginsMm: { left: 3, right: 4, lead: 5, trail: 15 },
  scaleCorrection: { scan: 1.001, feed: 1.004 },
};

describe('findPageLimits', () => {
  it('takes a portrait page as it is fed', () => {
    expect(findPageLimits(PRINTER, { width: 210, height: 297 })).toEqual({
      printableMm: { x: 3, y: 5, width: 203, height: 277 },
      scaleCorrection: { x: 1.001, y: 1.004 },
    });
  });

  it('keeps both margins that a landscape page may meet, and turns the axes', () => {
    expect(findPageLimits(PRINTER, { width: 297, height: 210 })).toEqual({
      printableMm: { x: 15, y: 4, width: 267, height: 202 },
      scaleCorrection: { x: 1.004, y: 1.001 },
    });
  });
});
