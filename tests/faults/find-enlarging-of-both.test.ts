import { describe, expect, it } from 'vitest';
import { findEnlarging } from '../../src/faults/find-enlarging.ts';
import { findEnlargingOfBoth, isSameOfBoth } from '../../src/faults/find-enlarging-of-both.ts';
import { cropRaster } from '../../src/raster/crop.ts';
import { readLumaLines } from '../../src/raster/luma-lines.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { paintLeaves } from '../leafy-art.ts';
import { scaled, stretched, throughJpeg } from '../photo-like-art.ts';
import { paintRaster, type Rgba } from '../pictures.ts';

const leaves = paintLeaves();
const codeAt = ({ widthPx, data }: Raster, x: number, y: number, channel: number) =>
  data[(y * widthPx + x) * 4 + channel]!;

/** As a camera sees it that moves so many pixels along y. */
function movedAlongY(raster: Raster, px: number): Raster {
  return paintRaster(raster.widthPx, raster.heightPx - px, (x, y): Rgba => {
    const mean = (channel: number) => {
      let sum = 0;
      for (let k = 0; k < px; k += 1) sum += codeAt(raster, x, y + k, channel);
      return Math.round(sum / px);
    };
    return [mean(0), mean(1), mean(2), 255];
  });
}

/** Of a strong red, with no blue at all over most of it: so is a petal. */
const petals = paintRaster(leaves.widthPx, leaves.heightPx, (x, y): Rgba => {
  const code = codeAt(leaves, x, y, 1);
  return [Math.min(255, 110 + code), code, Math.max(0, code - 190), 255];
});

describe('by how much both directions of a picture were enlarged', () => {
  it('is told by one where the other is soft', async () => {
    const art = await scaled(movedAlongY(leaves, 16), 3, 'lanczos3');
    expect(findEnlarging(readLumaLines(art, 'y', 128))).toBeNull();
    const found = findEnlargingOfBoth(art);
    expect(found.x!.factor).toBeCloseTo(3, 1);
    expect(found.y?.factor ?? 3).toBeCloseTo(3, 1);
  });

  it('is told by green where red and blue are cut off', async () => {
    const art = await scaled(petals, 2.5, 'cubic');
    expect(findEnlarging(readLumaLines(art, 'x', 128))).toBeNull();
    const found = findEnlargingOfBoth(art);
    expect(found.x!.factor).toBeCloseTo(2.5, 1);
    expect(found.y!.factor).toBeCloseTo(2.5, 1);
    expect(isSameOfBoth(found)).toBe(true);
  });

  it('is not told to be none by what compression added', async () => {
    for (const quality of [95, 85, 75]) {
      const found = findEnlargingOfBoth(await throughJpeg(await scaled(petals, 2.5, 'cubic'), quality));
      for (const one of [found.x, found.y]) expect(one?.factor ?? 2.5).toBeCloseTo(2.5, 1);
    }
  });

  it('is none where one direction is as fine as its pixels, but for a plain stretch', async () => {
    const little = findEnlargingOfBoth(await stretched(leaves, 1, 1.5, 'cubic'));
    expect([little.x!.factor, little.y!.factor]).toEqual([1, 1]);
    const plainly = findEnlargingOfBoth(await stretched(leaves, 1, 2.5, 'cubic'));
    expect(plainly.x!.factor).toBe(1);
    expect(plainly.y!.factor).toBeCloseTo(2.5, 1);
    expect(isSameOfBoth(plainly)).toBe(false);
  });

  it('is not told by a few lines alone', async () => {
    const large = await scaled(leaves, 3, 'cubic');
    const strip = (height: number) => cropRaster(large, { x: 0, y: 200, width: large.widthPx, height });
    const few = findEnlarging(readLumaLines(strip(11), 'x', 128))!;
    expect(few.factor).toBeCloseTo(3, 1);
    expect(few.isPlain).toBe(false);
    expect(findEnlargingOfBoth(strip(11))).toEqual({ x: null, y: null });
    expect(findEnlargingOfBoth(strip(40)).x).toMatchObject({ isPlain: true });
  });

  it('is each its own where both were enlarged by factors of their own', async () => {
    const found = findEnlargingOfBoth(await stretched(leaves, 2, 3, 'cubic'));
    expect(found.x!.factor).toBeCloseTo(2, 1);
    expect(found.y!.factor).toBeCloseTo(3, 1);
    expect(isSameOfBoth(found)).toBe(false);
  });

  it('is seen in the repeated pixels of flat art, which change at few of their ends', async () => {
    const discs = paintRaster(300, 240, (x, y): Rgba => {
      const far = Math.hypot((x % 61) - 30, (y % 53) - 26) - 19;
      const cover = Math.max(0, Math.min(1, 0.5 - far));
      const tone = 60 + ((37 * Math.floor(x / 61) + 53 * Math.floor(y / 53)) % 150);
      return [Math.round(230 - 200 * cover), Math.round(220 + (tone - 220) * cover), 200, 255];
    });
    const found = findEnlargingOfBoth(await scaled(discs, 2.6, 'nearest'));
    for (const one of [found.x!, found.y!]) {
      expect(one.by).toBe('repeated-pixels');
      expect(one.factor).toBeCloseTo(2.6, 1);
    }
    expect(findEnlargingOfBoth(discs).x?.factor ?? 1).toBe(1);
  });
});
