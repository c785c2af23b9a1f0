import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { makeGamutTable } from '../../src/icc/gamut-table.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { makeGenerator } from './random-colours.ts';

const PIXELS = 32 * 32;
const next = makeGenerator(32);
const rgb = Uint8Array.from({ length: PIXELS * 3 }, () => next() >>> 24);
const picture = () => sharp(rgb, { raw: { width: 32, height: 32, channels: 3 } });

/** The CMYK profile that is built into libvips, public domain by its own text; a picture brings it along. */
const builtIn = await picture()
  .withIccProfile('cmyk')
  .tiff()
  .toBuffer()
  .then((tiff) => sharp(tiff).metadata())
  .then(({ icc }) => readProfile(icc!));

describe('the CMYK profile that comes with the imaging library', () => {
  it('is read: a printer with tables of its own for every intent', () => {
    expect(builtIn).toMatchObject({ class: 'output', space: 'cmyk', connection: 'lab' });
    expect(builtIn.fromConnection?.perceptual).not.toBe(builtIn.fromConnection?.relative);
  });

  // The library's lcms: perceptual with a profile, relative colorimetric without. It interpolates trilinearly from Lab
  // and in 8 bits, so colours are compared, by the average, which a wrong table or intent would move by several dE00.
  it.each([
    ['perceptual', () => picture().withIccProfile('cmyk')],
    ['relative', () => picture().toColourspace('cmyk')],
  ] as const)('turns sRGB into the inks that lcms gives, %s', async (intent, convert) => {
    const theirs = await convert().raw().toBuffer();
    const transform = makeTransform(SRGB_PROFILE, builtIn, { intent, blackPointCompensation: false });
    const ours = new Uint8Array(PIXELS * 4);
    transform.compile().convert8(rgb, ours, PIXELS);
    const print = (inks: Uint8Array, i: number) =>
      toLabD50(
        builtIn,
        [...inks.subarray(4 * i, 4 * i + 4)].map((code) => code / 255),
        { intent: 'relative' },
      );
    const steps = Array.from({ length: PIXELS }, (_, i) => deltaE2000(print(ours, i), print(theirs, i)));
    expect(steps.reduce((sum, step) => sum + step, 0) / PIXELS).toBeLessThan(0.5);
  });

  // 4000 colours up to 280 % ink, measured with other code: mean 1.14, 99 % 3.65. So the limit is the noise.
  it('is too noisy for a limit of 3', () => {
    const { limit, noise } = makeGamutTable(builtIn);
    expect(noise).toBeGreaterThan(3.3);
    expect(noise).toBeLessThan(4);
    expect(limit).toBe(noise);
  });
});
