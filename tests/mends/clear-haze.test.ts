import { describe, expect, it } from 'vitest';
import clearHaze from '../../src/mends/clear-haze.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { findingsOf, outcomesOf } from '../checks/jobs.ts';
import { glowOf, paintHazy, veilOf } from '../hazy-art.ts';
import { applyMend } from './apply-mend.ts';

const request = { widthMm: 60 };

const mend = (raster: Raster) => applyMend(clearHaze, raster, request);

const alphaOf = ({ data }: Raster) => data.filter((_, i) => i % 4 === 3);

describe('clear-haze', () => {
  it.each([
    ['all over', paintHazy(() => 6)],
    ['with grain', veilOf(8, 25, 3)],
    ['in a square', veilOf(12, 20)],
  ])('clears the veil and nothing else: %s', (_, raster) => {
    const before = raster.data.slice();
    const mended = mend(raster);
    expect(raster.data).toEqual(before);
    expect(findingsOf(outcomesOf(raster, request), 'alpha-haze')).toHaveLength(1);
    expect(findingsOf(outcomesOf(mended, request), 'alpha-haze')).toEqual([]);
    // The disc and the marks are opaque; all else was veil.
    expect(alphaOf(mended)).toEqual(alphaOf(raster).map((alpha) => (alpha === 255 ? 255 : 0)));
    expect(mend(mended) === mended).toBe(true);
  });

  it('keeps a glow over the veil', () => {
    const glow = (far: number) => 200 * (1 - far / 8);
    const mended = mend(paintHazy((far) => Math.max(6, glow(far))));
    const wanted = alphaOf(paintHazy(glow));
    const is = alphaOf(mended);
    for (let i = 0; i < is.length; i += 1)
      if (is[i] !== wanted[i]) expect([wanted[i]! <= 11, is[i]]).toEqual([true, expect.any(Number)]);
    expect(findingsOf(outcomesOf(mended, request), 'alpha-haze')).toEqual([]);
    expect(mend(mended) === mended).toBe(true);
  });

  it('gives back the very raster where there is no veil', () => {
    for (const raster of [glowOf(160, 12, 'linear'), glowOf(16, 30, 'bell'), veilOf(2, 20)])
      expect(mend(raster) === raster).toBe(true);
  });
});
