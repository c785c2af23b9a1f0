import { describe, expect, it } from 'vitest';
import { cropRaster } from '../../src/raster/crop.ts';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { mirrorRaster } from '../../src/raster/mirror.ts';
import { padRaster } from '../../src/raster/pad.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { turnRaster } from '../../src/raster/turn.ts';
import { convert, type Picture, readArt } from '../real-art.ts';

/** ImageMagick forgets colours under clear pixels here and there: they are nobody's on both sides. */
function visible(rgba: Uint8Array | Uint16Array): Buffer {
  const samples = Buffer.from(rgba);
  for (let pixel = 0; pixel < samples.length; pixel += 4)
    if (samples[pixel + 3] === 0) samples.fill(0, pixel, pixel + 4);
  return samples;
}

function expectSame(picture: Picture, ours: Raster, theirs: Buffer): void {
  const same = Buffer.compare(visible(ours.data), visible(theirs)) === 0;
  expect([picture.path, same]).toEqual([picture.path, true]);
}

describe('real art, against ImageMagick', { timeout: 60_000 }, () => {
  it('is read alike by both, or nothing below means anything', async (context) => {
    const art = await readArt(context);
    expect(art.length).toBeGreaterThan(10);
    for (const picture of art) expectSame(picture, picture.raster, convert(picture.path));
  });

  it('mirrors as -flop does', async (context) => {
    for (const picture of await readArt(context))
      expectSame(picture, mirrorRaster(picture.raster), convert(picture.path, '-flop'));
  });

  it('turns as -rotate does', async (context) => {
    for (const picture of await readArt(context))
      for (const degrees of [90, 180, 270] as const)
        expectSame(
          picture,
          turnRaster(picture.raster, degrees),
          convert(picture.path, '-rotate', `${degrees}`),
        );
  });

  it('crops as -crop does', async (context) => {
    for (const picture of await readArt(context)) {
      const { widthPx, heightPx } = picture.raster;
      const [width, height] = [widthPx - 5, heightPx - 7];
      const ours = cropRaster(picture.raster, { x: 3, y: 6, width, height });
      expectSame(picture, ours, convert(picture.path, '-crop', `${width}x${height}+3+6`, '+repage'));
    }
  });

  it('pads and cuts as -extent does', async (context) => {
    for (const picture of await readArt(context))
      for (const [x, y] of [
        [9, 4],
        [-5, 11],
      ] as const) {
        const ours = padRaster(picture.raster, { widthPx: 70, heightPx: 60, x, y });
        const extent = `70x60${x > 0 ? '-' : '+'}${Math.abs(x)}-${y}`;
        expectSame(picture, ours, convert(picture.path, '-background', 'none', '-extent', extent));
      }
  });

  it('composites within one level of -flatten, which rounds twice', async (context) => {
    for (const picture of await readArt(context)) {
      const ours = flattenRaster(picture.raster, { r: 250, g: 240, b: 10 });
      const theirs = convert(picture.path, '-background', 'rgb(250,240,10)', '-flatten');
      let worst = 0;
      ours.data.forEach((value, i) => {
        worst = Math.max(worst, Math.abs(value - theirs[Math.floor(i / 3) * 4 + (i % 3)]!));
      });
      expect([picture.path, worst <= 1]).toEqual([picture.path, true]);
    }
  });
});
