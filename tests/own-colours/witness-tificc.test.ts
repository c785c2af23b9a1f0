import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { parametricTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { transpose } from '../../src/colour/matrix3.ts';
import type { TransformOptions } from '../../src/icc/adjustment.ts';
import { WIDE_PROFILE } from '../../src/icc/wide-profile.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { writeMatrixProfile } from '../icc/simple-profiles.ts';
import { makeByWitness, requireWitness } from '../witness.ts';
import { CASES } from './cases.ts';
import {
  codesOf,
  lossesOf,
  P3,
  PRESS,
  prepare,
  RGB_PRINTER,
  RGB_TABLE,
  rgbArt,
  SIDE,
  summary,
  WAY,
} from './jobs.ts';

const INTENTS = ['perceptual', 'relative', 'saturation', 'absolute'] as const;
const INTENT_NUMBER = { perceptual: 0, relative: 1, saturation: 2, absolute: 3 };

const model = WIDE_PROFILE.toConnection!.relative;
if (model.kind !== 'matrix') throw new Error('expected a matrix');
const WIDE = writeMatrixProfile(
  parametricTag(3, [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045]),
  4,
  transpose(model.matrix),
);

/** The whole picture converted by the other program, step after step, kept at 16 bits: samples of 0…1. */
async function convertByTificc(
  samples: readonly number[],
  channels: 3 | 4,
  profiles: readonly Uint8Array[],
  ways: readonly TransformOptions[],
): Promise<number[][]> {
  let tiff: Uint8Array = writeTiff([
    {
      entries: pictureEntries({
        widthPx: SIDE,
        heightPx: SIDE,
        bits: Array(channels).fill(8),
        photometric: channels === 4 ? 5 : 2,
      }),
      pixels: Uint8Array.from(samples),
    },
  ]);
  for (const [i, { intent, blackPointCompensation }] of ways.entries()) {
    const files = { 'in.tif': tiff, 'from.icc': profiles[i]!, 'to.icc': profiles[i + 1]! };
    const options = [`-t${INTENT_NUMBER[intent]}`, '-w16', '-c0', ...(blackPointCompensation ? ['-b'] : [])];
    tiff = makeByWitness(
      'tificc',
      [...options, '-ifrom.icc', '-oto.icc', 'in.tif', 'out.tif'],
      files,
      'out.tif',
    );
  }
  const { space } = await sharp(tiff, { ignoreIcc: true }).metadata();
  const wide = space === 'cmyk' ? 'cmyk' : 'rgb16';
  const { data, info } = await sharp(tiff, { ignoreIcc: true })
    .pipelineColourspace(wide)
    .toColourspace(wide)
    .raw({ depth: 'ushort' })
    .toBuffer({ resolveWithObject: true });
  const codes = new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
  return Array.from({ length: SIDE * SIDE }, (_, i) =>
    Array.from(codes.subarray(i * info.channels, (i + 1) * info.channels), (code) => code / 65535),
  );
}

const RGB = codesOf(3);
const PRINTERS = [
  ['the inks of the reference', COATED_REFERENCE],
  ['the inks of another press', PRESS],
  ['an RGB printer of curves and a matrix', RGB_PRINTER],
  ['an RGB printer of tables', RGB_TABLE],
] as const;

// The other program evaluates every pixel; here a grid is between, the file has 8 bits, and the two interpolate
// unlike: tenths of a dE00, more in tables that are random numbers. A second conversion, another intent or a lost compensation would be whole ones.
describe.each(PRINTERS)('a whole picture to %s, against tificc', (_, printer) => {
  it.for(INTENTS)('by the intent %s, with compensation and without', async (intent, context) => {
    requireWitness(context, 'tificc');
    for (const blackPointCompensation of [true, false]) {
      const way = { intent, blackPointCompensation };
      const made = await prepare(rgbArt(P3, RGB), printer, { way });
      const theirs = await convertByTificc(RGB, 3, [P3, printer], [way]);
      const { mean, p95 } = summary(lossesOf(made, theirs));
      expect(mean).toBeLessThan(printer === RGB_TABLE ? 0.8 : 0.5);
      expect(p95).toBeLessThan(printer === RGB_TABLE ? 2 : 1.5);
    }
  });
});

// Inks come into the working picture as they look; only what follows goes by the intent that was asked for. RGB of
// tables that lead both ways is a working picture itself.
describe.each(CASES)('%s, against tificc', (_, art, own, codes, channels, printer) => {
  it.for(INTENTS)('by the intent %s', async (intent, context) => {
    requireWitness(context, 'tificc');
    const way = { intent, blackPointCompensation: intent !== 'absolute' };
    const made = await prepare(art, printer, { way });
    const theirs =
      channels === 4
        ? await convertByTificc(codes, channels, [own, WIDE, printer], [WAY, way])
        : await convertByTificc(codes, channels, [own, printer], [way]);
    const { mean, p95 } = summary(lossesOf(made, theirs));
    expect(mean).toBeLessThan(channels === 4 ? 0.5 : 0.8);
    expect(p95).toBeLessThan(channels === 4 ? 1.5 : 2.5);
  });
});
