import { describe, expect, it } from 'vitest';
import { measureInkCoverage } from '../../src/raster/ink-coverage.ts';
import type { Raster } from '../../src/raster/raster.ts';

const raster = (
  model: Raster['model'],
  hasAlpha: boolean,
  ...pixels: readonly (readonly number[])[]
): Raster => ({
  widthPx: pixels.length,
  heightPx: 1,
  model,
  hasAlpha,
  depth: 8,
  data: Uint8Array.from(pixels.flat()),
});

describe('the cover of ink', () => {
  it.each([
    ['white', raster('rgb', false, [255, 255, 255]), 0],
    ['black', raster('rgb', false, [0, 0, 0]), 1],
    ['red, of two inks', raster('rgb', false, [255, 0, 0]), 1],
    ['a fifth of magenta', raster('rgb', false, [255, 204, 255]), 0.2],
    ['half black, half white', raster('rgb', false, [0, 0, 0], [255, 255, 255]), 0.5],
    ['black of alpha 51 of 255', raster('rgb', true, [0, 0, 0, 51]), 0.2],
    ['what is clear', raster('rgb', true, [0, 0, 0, 0]), 0],
    ['gray', raster('gray', false, [102]), 0.6],
    ['inks', raster('cmyk', false, [0, 51, 204, 0], [0, 0, 0, 0]), 0.4],
    ['no pixel', raster('rgb', false), 0],
  ])('%s', (_, picture, expected) => expect(measureInkCoverage(picture)).toBeCloseTo(expected, 12));

  it('is the same at 16 bits', () => {
    const deep: Raster = {
      widthPx: 1,
      heightPx: 1,
      model: 'rgb',
      hasAlpha: true,
      depth: 16,
      data: Uint16Array.from([65535, 32768, 0, 65535 / 5]),
    };
    expect(measureInkCoverage(deep)).toBeCloseTo(0.2, 9);
  });
});
