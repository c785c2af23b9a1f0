import { describe, expect, it } from 'vitest';
import { layOnto } from '../../src/raster/lay-onto.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';

const gray = (widthPx: number, heightPx: number, values: readonly number[] = []): Raster => {
  const raster = createRaster({ widthPx, heightPx, model: 'gray', hasAlpha: false, depth: 8 });
  raster.data.set(values);
  return raster;
};
const laid = (x: number, y: number) => {
  const page = gray(3, 3);
  layOnto(page, gray(2, 2, [1, 2, 3, 4]), x, y);
  return [...page.data];
};

describe('layOnto', () => {
  it('copies each pixel to its place', () => {
    expect(laid(1, 0)).toEqual([0, 1, 2, 0, 3, 4, 0, 0, 0]);
  });

  it('leaves out what overhangs, on every side', () => {
    expect(laid(-1, -1)).toEqual([4, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(laid(2, 2)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 1]);
    expect(laid(3, 0)).toEqual(Array(9).fill(0));
    expect(laid(0, -2)).toEqual(Array(9).fill(0));
  });

  it('refuses a picture of another kind', () => {
    const coloured = createRaster({ widthPx: 1, heightPx: 1, model: 'rgb', hasAlpha: false, depth: 8 });
    expect(() => layOnto(gray(2, 2), coloured, 0, 0)).toThrow('one kind');
  });
});
