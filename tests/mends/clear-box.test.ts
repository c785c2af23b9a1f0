import { describe, expect, it } from 'vitest';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { mendArtwork } from '../../src/mend-artwork.ts';
import clearBox from '../../src/mends/clear-box.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { findingsOf, outcomesOf, PLATE, subjectOf } from '../checks/jobs.ts';
import { boxOf } from '../cut-out-art.ts';
import { artworkOf, GREEN, paintRaster } from '../pictures.ts';

const condition = await loadCondition('coated-reference');
const request = { widthMm: 60 };

function mend(raster: Raster, asked = request): Raster {
  const job = (placed = raster) => subjectOf(placed, asked).job;
  return clearBox.apply(raster, { source: SRGB_PROFILE, condition, conversion: null, job, extend: 'reflect' })
    .raster;
}

/** The same without alpha. */
function opaque(raster: Raster): Raster {
  return { ...raster, hasAlpha: false, data: raster.data.filter((_, i) => i % 4 !== 3) };
}

describe('clear-box', () => {
  it.each([
    ['nearly white', boxOf(247)],
    ['with the noise of JPEG', boxOf(247, 3)],
    ['of one colour', boxOf(90)],
    ['without alpha', opaque(boxOf(247, 3))],
  ])('clears the ground, keeps the disc, and passes the check: %s', (_, raster) => {
    const before = raster.data.slice();
    const mended = mend(raster);
    expect(raster.data).toEqual(before);
    expect(findingsOf(outcomesOf(raster, request), 'near-white-box')).toHaveLength(1);
    expect(findingsOf(outcomesOf(mended, request), 'near-white-box')).toEqual([]);
    expect(mended.hasAlpha).toBe(true);
    for (let i = 0; i < 300 * 300; i += 1) {
      const disc = Math.hypot((i % 300) - 150, Math.floor(i / 300) - 150) < 50;
      const pixel = [...mended.data.subarray(4 * i, 4 * i + 4)];
      if (pixel.join() !== (disc ? GREEN : [0, 0, 0, 0]).join()) expect([i, pixel]).toBe('as expected');
    }
    expect(mend(mended) === mended).toBe(true);
  });

  it('leaves white grounds, coloured ones that cover the blank, and art without a box', () => {
    for (const raster of [boxOf(255), paintRaster(50, 50, () => GREEN)])
      expect(mend(raster) === raster).toBe(true);
    const ground = boxOf(90);
    expect(mend(ground, { widthMm: 106 }) === ground).toBe(true);
  });

  it('is reported with its area and alpha, also where the art had none', async () => {
    const { mends } = await mendArtwork(artworkOf(opaque(boxOf(247))), {
      blank: PLATE,
      ...request,
      mends: ['clear-box'],
    });
    expect(mends).toHaveLength(1);
    expect(mends[0]).toMatchObject({ mend: 'clear-box', largestAlpha: 255 });
    const { data } = boxOf(247);
    expect(mends[0]!.pixels).toBe(data.filter((code, i) => i % 4 === 0 && code === 247).length);
  });
});
