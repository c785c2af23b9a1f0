import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { findEnlarging } from '../../src/faults/find-enlarging.ts';
import { readLumaLines } from '../../src/raster/luma-lines.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { makeByWitness, requireCorpus, requireWitness } from '../witness.ts';

/** Photographs of Debian's mate-backgrounds. */
const PHOTOS = '/usr/share/backgrounds/mate/nature';
const SIZE = { width: 960, height: 720 };
// All take minutes: RATES=1 looks at them.
const WHOLE = process.env.RATES === '1';
const EVERY = WHOLE ? 1 : 6;
const FACTORS = WHOLE ? [1.25, 1.5, 2, 2.5, 3, 4, 5, 6] : [1.5, 3];
const BY_SHARP = ['linear', 'cubic', 'mitchell', 'nearest'] as const;
const BY_IMAGEMAGICK = ['Triangle', 'Catrom', 'Mitchell', 'Lanczos', 'Point'] as const;

async function decode(bytes: Uint8Array): Promise<Raster> {
  const { data, info } = await sharp(bytes)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { widthPx: info.width, heightPx: info.height, model: 'rgb', hasAlpha: false, depth: 8, data };
}

/** What a photograph is after it was reduced by a factor and enlarged to where it was, by each kernel of both programs. */
async function* enlargements(photo: Buffer, factor: number) {
  const [width, height] = [Math.round(SIZE.width / factor), Math.round(SIZE.height / factor)];
  const small = await sharp(photo).resize(width, height, { fit: 'fill' }).png().toBuffer();
  for (const kernel of BY_SHARP)
    yield {
      width,
      height,
      raster: await decode(
        await sharp(small)
          .resize({ ...SIZE, kernel, fit: 'fill' })
          .png()
          .toBuffer(),
      ),
    };
  for (const filter of BY_IMAGEMAGICK) {
    const size = `${SIZE.width}x${SIZE.height}!`;
    const args = ['small.png', '-filter', filter, '-resize', size, '-depth', '8', 'large.png'];
    yield {
      width,
      height,
      raster: await decode(makeByWitness('convert', args, { 'small.png': small }, 'large.png')),
    };
  }
}

it('tells by how much sharp and ImageMagick enlarged photographs, to 20 %', {
  timeout: 600_000,
}, async (context) => {
  requireWitness(context, 'convert');
  const paths = requireCorpus(context, PHOTOS, '.jpg').filter((_, i) => i % EVERY === 0);
  const counts = { right: 0, unknown: 0, finer: 0, coarser: 0 };
  for (const path of paths) {
    const photo = await sharp(readFileSync(path))
      .removeAlpha()
      .resize({ ...SIZE, fit: 'cover' })
      .png()
      .toBuffer();
    for (const factor of FACTORS)
      for await (const { width, height, raster } of enlargements(photo, factor))
        for (const [axis, truth] of [
          ['x', SIZE.width / width],
          ['y', SIZE.height / height],
        ] as const) {
          const share = (findEnlarging(readLumaLines(raster, axis, 128))?.factor ?? Number.NaN) / truth;
          if (Number.isNaN(share)) counts.unknown += 1;
          else if (share > 1.2) counts.coarser += 1;
          else if (share < 1 / 1.2) counts.finer += 1;
          else counts.right += 1;
        }
  }
  console.info(JSON.stringify(counts));
  const told = counts.right + counts.finer + counts.coarser;
  expect(counts.coarser / told).toBeLessThan(0.01);
  expect(counts.right / told).toBeGreaterThan(0.95);
  expect(counts.unknown / (told + counts.unknown)).toBeLessThan(0.3);
});
