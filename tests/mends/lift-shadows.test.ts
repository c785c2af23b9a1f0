import { describe, expect, it } from 'vitest';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { mendArtwork, reportMends } from '../../src/mend-artwork.ts';
import liftShadows from '../../src/mends/lift-shadows.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { codesOf, deepen, judgeColours, paintRgb } from '../checks/colour-jobs.ts';
import { PLATE, subjectOf } from '../checks/jobs.ts';
import { artworkOf, paintRaster } from '../pictures.ts';

const condition = await loadCondition('coated-reference');
const mend = (raster: Raster) =>
  liftShadows.apply(raster, {
    source: SRGB_PROFILE,
    condition,
    conversion: null,
    job: (placed = raster) => subjectOf(placed, { widthMm: raster.widthPx / 10 }).job,
    extend: 'reflect',
  }).raster;

/** 0.1 mm a pixel: all grays of 0 to 255 from left to right, in rows that alternate with gray 20 less. */
const shadows = paintRgb(512, 200, (x, y) => {
  const code = Math.max(0, Math.floor(x / 2) - (Math.floor(y / 5) % 2 === 0 ? 0 : 20));
  return [code, code, code];
});

/** CIE 15:2018 and IEC 61966-2-1, for grays. */
function lightnessOf(code: number): number {
  const v = code / 255;
  const y = v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
}

describe('lift-shadows', () => {
  // 8.97 is the printed black of the reference, 0.5 the tone that merges, 0.5 for rounding.
  const foot = 8.97 + 0.5 + 0.5;
  const curve = (l: number) => Math.max(l, foot + (2 / 3) * l);

  it('follows its stated curve to a step of 8 bits, and leaves what is lighter', () => {
    const mended = mend(shadows);
    for (let i = 0; i < shadows.data.length; i += 3) {
      const [was, is] = [shadows.data[i]!, mended.data[i]!];
      const wanted = curve(lightnessOf(was));
      if (lightnessOf(is) < wanted - 0.06 || lightnessOf(is - 1) > wanted + 0.06)
        expect([was, is]).toBe('on the curve');
      if (lightnessOf(was) > 3 * foot + 0.1) expect(is).toBe(was);
    }
  });

  it('leaves nothing to the check that asked for it, twice nothing more, and the input as it was', async () => {
    for (const raster of [shadows, deepen(shadows)]) {
      const before = raster.data.slice();
      expect(codesOf((await judgeColours(raster)).dark)).toEqual(['shadow-merge:advice']);
      const mended = mend(raster);
      expect(codesOf((await judgeColours(mended)).dark)).toEqual([]);
      expect(mend(mended) === mended).toBe(true);
      expect(raster.data).toEqual(before);
    }
  });

  it('keeps the order of tones: what was darker is not lighter', () => {
    const mended = mend(shadows);
    const at = (code: number) => mended.data[3 * (2 * code)]!;
    for (let code = 1; code < 256; code += 1) expect(at(code)).toBeGreaterThanOrEqual(at(code - 1));
  });

  it('lifts what is half clear by the same share, so that it prints on the curve too', () => {
    const raster = paintRaster(200, 200, (x, y) => {
      const code = Math.floor(x / 5) % 2 === 0 ? 0 : 20;
      return [code, code, code, y < 100 ? 255 : 250];
    });
    const mended = mend(raster);
    const printed = (255 * 5 + mended.data[4 * (150 * 200)]! * 250) / 255;
    const was = 5;
    expect(lightnessOf(printed)).toBeGreaterThanOrEqual(curve(lightnessOf(was)) - 0.06);
    expect(mended.data[4 * (150 * 200) + 3]).toBe(250);
  });

  it('leaves what merges with nothing: black lettering, one tone, light art', () => {
    const black = paintRgb(300, 300, (x) => (x % 60 < 20 ? [0, 0, 0] : [255, 255, 255]));
    const flat = paintRgb(300, 300, () => [5, 5, 5]);
    const light = paintRgb(300, 300, (x) => [200, x % 200, 90]);
    for (const raster of [black, flat, light]) expect(mend(raster) === raster).toBe(true);
  });

  it('is reported with what it mended, in dE00', async () => {
    const artwork = artworkOf(shadows);
    const request = { blank: PLATE, ppi: 254, widthMm: 51.2, mends: ['lift-shadows'] };
    const { mends, artwork: mended } = await mendArtwork(artwork, request);
    expect(mended.raster.data).toEqual(mend(shadows).data);
    const [report] = reportMends(mends, []);
    expect(report).toMatchObject({ mend: 'lift-shadows', mended: ['dark-coverage/shadow-merge'] });
    // Black to L* 10 is the most.
    expect(report!.largestDeltaE00).toBeGreaterThan(5);
    expect(report!.largestDeltaE00).toBeLessThan(10.5);
  });
});
