import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { pictureEntries, writeTiff } from '../fixtures/byte-writers/write-tiff.ts';
import { deltaE2000 } from '../src/colour/delta-e-2000.ts';
import { loadCondition } from '../src/conditions/load-condition.ts';
import type { Artwork } from '../src/formats/artwork.ts';
import { convertToSrgb } from '../src/formats/convert-to-srgb.ts';
import { readArtwork as readFormat } from '../src/formats/read-artwork.ts';
import { toLabD50 } from '../src/icc/lab-d50.ts';
import { SRGB_PROFILE } from '../src/icc/srgb-profile.ts';
import { makeTransform } from '../src/icc/transform.ts';
import { WIDE_PROFILE } from '../src/icc/wide-profile.ts';
import { readArtwork } from '../src/read-artwork.ts';
import { makeGenerator } from './icc/random-colours.ts';
import { requireWitness } from './witness.ts';

const SIDE = 24;
const PIXELS = SIDE * SIDE;
const next = makeGenerator(4);
/** Inks as separations have them, up to 280 % in all; the first pixel is paper. */
const INKS = Array.from({ length: PIXELS }, (_, i) => {
  const inks = [next(), next(), next(), next()].map((value) => value >>> 24);
  const scale = Math.min(1, (2.8 * 255) / inks.reduce((sum, ink) => sum + ink, 0));
  return i === 0 ? [0, 0, 0, 0] : inks.map((ink) => Math.floor(ink * scale));
}).flat();

const cmykTiff = (bits: 8 | 16, inks: readonly number[]) =>
  writeTiff([
    {
      entries: pictureEntries({
        widthPx: SIDE,
        heightPx: SIDE,
        bits: [bits, bits, bits, bits],
        photometric: 5,
      }),
      pixels: Uint8Array.from(bits === 8 ? inks : inks.flatMap((ink) => [ink, ink])),
    },
  ]);

const { profile: REFERENCE } = await loadCondition('coated-reference');
const exactly = makeTransform(REFERENCE, SRGB_PROFILE, { intent: 'relative', blackPointCompensation: true });
const labOf = (rgb: readonly number[]) => toLabD50(SRGB_PROFILE, rgb, { intent: 'relative' });

/** dE00 of every pixel against the exact conversion of its inks by the reference. */
const differences = (data: ArrayLike<number>, full: number, inks: readonly number[] = INKS) =>
  Array.from({ length: PIXELS }, (_, i) =>
    deltaE2000(
      labOf([0, 1, 2].map((k) => data[3 * i + k]! / full)),
      labOf(exactly.convert(inks.slice(4 * i, 4 * i + 4).map((ink) => ink / 255))),
    ),
  );
/** The working picture's samples in sRGB, as the print-ready file will have them. */
const inSrgb = ({ raster, ownColours }: Artwork) =>
  convertToSrgb({ ...raster, data: raster.data.slice() }, ownColours!.toSrgb).data;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('CMYK without a profile', () => {
  // The grid's own error, and in 8 bits the rounding of its results.
  it.each([8, 16] as const)('is read as the reference condition says, %i bit', async (bits) => {
    const artwork = await readArtwork(cmykTiff(bits, INKS));
    const { raster, profile, ownColours } = artwork;
    expect(profile).toEqual({ kind: 'cmyk', name: null, sha256: null });
    // Unclipped, at 16 bits, until it has been judged.
    expect(ownColours?.profile).toBe(WIDE_PROFILE);
    expect(raster).toMatchObject({ model: 'rgb', depth: 16 });
    const full = 65535;
    expect([...raster.data.slice(0, 3)]).toEqual([full, full, full]);
    const steps = differences(inSrgb(artwork), full);
    expect(mean(steps)).toBeLessThan(0.25);
    expect(Math.max(...steps)).toBeLessThan(1.5);
  });

  it('is read so from a JPEG whose APP14 marker says that its inks stand inverted', async () => {
    const flat = Array.from({ length: PIXELS }, () => [200, 40, 10, 20]).flat();
    const jpeg = await sharp(cmykTiff(8, flat))
      .pipelineColourspace('cmyk')
      .toColourspace('cmyk')
      .jpeg({ quality: 100 })
      .toBuffer();
    expect(jpeg.includes('Adobe')).toBe(true);
    const artwork = await readArtwork(jpeg);
    const { profile } = artwork;
    expect(profile).toEqual({ kind: 'cmyk', name: null, sha256: null });
    // The JPEG's own rounding moves an ink by at most two codes.
    expect(Math.max(...differences(inSrgb(artwork), 65535, flat))).toBeLessThan(1.5);
  });

  // Little CMS interpolates four inks another way: 0.06 on average, 0.42 at most in Lab, rounded here to 8 bits.
  it('comes out as Little CMS converts it by the same profile', async (context) => {
    requireWitness(context, 'tificc');
    const ours = inSrgb(await readArtwork(cmykTiff(8, INKS)));
    const theirs = await convertByTificc(cmykTiff(8, INKS));
    const at = (data: ArrayLike<number>, i: number, full = 255) =>
      [0, 1, 2].map((k) => data[3 * i + k]! / full);
    const steps = Array.from({ length: PIXELS }, (_, i) =>
      deltaE2000(labOf(at(ours, i, 65535)), labOf(at(theirs, i))),
    );
    expect(mean(steps)).toBeLessThan(0.3);
    expect(Math.max(...steps)).toBeLessThan(2);
  });

  it('cannot be read without a condition', async () => {
    await expect(readFormat(cmykTiff(8, INKS))).rejects.toThrow('printing condition');
  });
});

/** The samples that Little CMS makes of a TIFF in the reference's inks, in its own sRGB. */
async function convertByTificc(tiff: Uint8Array): Promise<Uint8Array> {
  const icc = fileURLToPath(new URL('../seeds/conditions/coated-reference.icc', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-witness-'));
  try {
    writeFileSync(join(folder, 'inks.tif'), tiff);
    const run = spawnSync('tificc', ['-t1', '-b', '-c0', `-i${icc}`, 'inks.tif', 'rgb.tif'], { cwd: folder });
    expect(run.status).toBe(0);
    return await sharp(readFileSync(join(folder, 'rgb.tif')), { ignoreIcc: true })
      .raw()
      .toBuffer();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
