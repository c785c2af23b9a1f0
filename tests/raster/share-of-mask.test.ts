import { describe, expect, it } from 'vitest';
import { shareOfMask } from '../../src/raster/share-of-mask.ts';

describe('shareOfMask', () => {
  it('tells the marked share of each cell in quarters, and loses no pixel', () => {
    // biome-ignore format: a picture
    const mask = Uint8Array.of(
      1, 1, 0, 0, 1,
      1, 1, 0, 1, 0,
      0, 0, 0, 0, 0,
    );
    const shares = shareOfMask(mask, 5, 2)!;
    expect([shares.widthPx, shares.heightPx]).toEqual([3, 2]);
    expect([...shares.data]).toEqual([255, 64, 64, 0, 0, 0]);
  });

  it('is null where nothing is marked', () => {
    expect(shareOfMask(new Uint8Array(12), 4, 2)).toBeNull();
  });
});
