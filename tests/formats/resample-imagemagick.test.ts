import { describe, expect, it } from 'vitest';
import { resample } from '../../src/formats/resample.ts';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { wholeOf } from '../../src/raster/pad.ts';
import { convert, readArt } from '../real-art.ts';

const white = { r: 255, g: 255, b: 255 };

describe('resample of real art, against ImageMagick', { timeout: 60_000 }, () => {
  it.for([0.83, 0.47, 0.3])('reduces to %f as -filter Catrom -resize does', async (scale, context) => {
    for (const { path, raster } of await readArt(context)) {
      const widthPx = Math.ceil(raster.widthPx * scale);
      const heightPx = Math.ceil(raster.heightPx * scale);
      const ours = await resample(raster, { rectPx: wholeOf(raster), widthPx, heightPx });
      const data = convert(path, '-filter', 'Catrom', '-resize', `${widthPx}x${heightPx}!`);
      const [a, b] = [ours, { ...ours, data }].map((picture) => flattenRaster(picture, white).data);
      // Near the border ImageMagick cuts the kernel off where we repeat pixels: only what it cannot reach is compared.
      const border = 3;
      let worst = 0;
      for (let y = border; y < heightPx - border; y++)
        for (let x = border; x < widthPx - border; x++)
          for (let i = (y * widthPx + x) * 3; i < (y * widthPx + x + 1) * 3; i++)
            worst = Math.max(worst, Math.abs(a![i]! - b![i]!));
      // Both work in whole numbers, at 8 and 16 bits, and clip between rows and columns.
      expect([path, worst <= 4 ? 'alike' : worst]).toEqual([path, 'alike']);
    }
  });
});
