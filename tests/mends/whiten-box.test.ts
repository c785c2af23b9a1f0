import { describe, expect, it } from 'vitest';
import whitenBox from '../../src/mends/whiten-box.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { findingsOf, outcomesOf } from '../checks/jobs.ts';
import { GREEN, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { applyMend } from './apply-mend.ts';

const request = { widthMm: 60 };

const mend = (raster: Raster) => applyMend(whitenBox, raster, request);

/** A ring on a noisy ground: inside it is a patch of the ground's colour, which the ring encloses. */
function ringOn(code: number, noise: number): Raster {
  const next = seededNumbers(3);
  return paintRaster(120, 120, (x, y): Rgba => {
    const r = Math.hypot(x - 59.5, y - 59.5);
    const c = code + Math.round((next() - 0.5) * 2 * noise);
    return r > 20 && r < 40 ? GREEN : [c, c, c, 255];
  });
}

describe('whiten-box', () => {
  it.each([0, 3])('makes the ground white, keeps the rest, and passes the check: noise of %d', (noise) => {
    const raster = ringOn(247, noise);
    const before = raster.data.slice();
    const mended = mend(raster);
    expect(raster.data).toEqual(before);
    expect(findingsOf(outcomesOf(raster, request), 'near-white-box')).toHaveLength(1);
    expect(findingsOf(outcomesOf(mended, request), 'near-white-box')).toEqual([]);
    for (let i = 0; i < 120 * 120; i += 1) {
      const outside = Math.hypot((i % 120) - 59.5, Math.floor(i / 120) - 59.5) >= 40;
      const expected = outside ? [255, 255, 255, 255] : [...before.subarray(4 * i, 4 * i + 4)];
      if (mended.data[4 * i] !== expected[0] || mended.data[4 * i + 3] !== 255) expect(i).toBe('as expected');
    }
    expect(mend(mended) === mended).toBe(true);
  });

  it('leaves white and coloured grounds, and steps that nobody sees', () => {
    for (const code of [255, 254, 253, 220, 0]) {
      const raster = ringOn(code, 0);
      expect(mend(raster) === raster).toBe(true);
    }
  });
});
