import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { findEnlarging } from '../../src/faults/find-enlarging.ts';
import { findEnlargingOfBoth } from '../../src/faults/find-enlarging-of-both.ts';
import { readLumaLines } from '../../src/raster/luma-lines.ts';
import { requireCorpus, requireWitness } from '../witness.ts';
import { type Counts, count, enlargements, noCounts, toldOf } from './enlargements.ts';

/** Photographs of Debian's mate-backgrounds. */
const PHOTOS = '/usr/share/backgrounds/mate/nature';
const SIZE = { width: 960, height: 720 };
/** Clip art of Debian's openclipart-png, every so many of those that are of this size. */
const FLAT_ART = '/usr/share/openclipart/png';
const FLAT_EVERY = 70;
const FLAT_PX = { least: 200, most: 1000 };
// All take minutes: RATES=1 looks at them.
const WHOLE = process.env.RATES === '1';
const EVERY = WHOLE ? 1 : 6;
const FACTORS = WHOLE ? [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6] : [1, 1.5, 3];

const toldIn = ({ right, finer, coarser }: Counts) => right + finer + coarser;

it('tells by how much sharp and ImageMagick enlarged photographs, to 20 %', {
  timeout: 1_800_000,
}, async (context) => {
  requireWitness(context, 'convert');
  const paths = requireCorpus(context, PHOTOS, '.jpg').filter((_, i) => i % EVERY === 0);
  // A direction alone by its luma; each having heard the other; what the check tells; that of what nobody enlarged.
  const counts = { alone: noCounts(), heard: noCounts(), check: noCounts(), untouched: noCounts() };
  const wrong: string[] = [];
  for (const path of paths) {
    const photo = await sharp(readFileSync(path))
      .removeAlpha()
      .resize({ ...SIZE, fit: 'cover' })
      .png()
      .toBuffer();
    for (const factor of FACTORS)
      for await (const { x, y, by, raster } of enlargements(photo, factor)) {
        const answer = count(factor === 1 ? counts.untouched : counts.check, toldOf(raster), Math.max(x, y));
        if (answer !== 'right') wrong.push(`${path.slice(PHOTOS.length + 1)} ${factor} ${by}: ${answer}`);
        if (factor === 1) continue;
        const both = findEnlargingOfBoth(raster);
        for (const [axis, truth] of [
          ['x', x],
          ['y', y],
        ] as const) {
          count(counts.alone, findEnlarging(readLumaLines(raster, axis, 128))?.factor ?? null, truth);
          count(counts.heard, both[axis]?.factor ?? null, truth);
        }
      }
  }
  console.info([JSON.stringify(counts), ...wrong].join('\n'));
  // Of 864 the check tells 852, all of them rightly; 10 of the others are of one photograph, soft along its rows by motion.
  for (const [found, mostUnknown] of [
    [counts.alone, 0.12],
    [counts.heard, 0.05],
    [counts.check, 0.02],
  ] as const) {
    expect(found.coarser).toBe(0);
    expect(found.right / toldIn(found)).toBeGreaterThan(0.99);
    expect(found.unknown / (toldIn(found) + found.unknown)).toBeLessThan(mostUnknown);
  }
  expect(counts.check.finer).toBe(0);
  // What nobody enlarged is fine, or not known: never coarse.
  expect(counts.untouched.coarser).toBe(0);
  expect(counts.untouched.right).toBeGreaterThan(paths.length * 0.6);
});

it('never tells that flat art is coarser than it is, by more than 20 %', {
  timeout: 1_800_000,
}, async (context) => {
  requireWitness(context, 'convert');
  const paths = requireCorpus(context, FLAT_ART, '.png').filter((_, i) => i % FLAT_EVERY === 0);
  const counts = noCounts();
  const wrong: string[] = [];
  let pieces = 0;
  for (const path of paths) {
    const { width, height } = await sharp(path).metadata();
    if (Math.min(width, height) < FLAT_PX.least || Math.max(width, height) > FLAT_PX.most) continue;
    pieces += 1;
    if (!WHOLE && pieces % 7 !== 1) continue;
    // Half of them cut out, as they are; half on white, as a shop shows them.
    const art = sharp(path).toColourspace('srgb').ensureAlpha();
    const whole = await (pieces % 2 === 0 ? art : art.flatten({ background: '#fff' })).png().toBuffer();
    for (const factor of FACTORS)
      for await (const { x, y, by, raster } of enlargements(whole, factor)) {
        const answer = count(counts, toldOf(raster), Math.max(x, y));
        if (answer === 'coarser') wrong.push(`${path.slice(FLAT_ART.length + 1)} ${factor} ${by}`);
      }
  }
  console.info([`${pieces} pieces: ${JSON.stringify(counts)}`, ...wrong].join('\n'));
  if (WHOLE) expect(pieces).toBeGreaterThanOrEqual(30);
  expect(counts.coarser).toBe(0);
  // Nothing is told of nearly half of it: most flat art has little but its outlines.
  expect(toldIn(counts) / (toldIn(counts) + counts.unknown)).toBeGreaterThan(0.5);
  expect(counts.finer / toldIn(counts)).toBeLessThan(0.12);
});
