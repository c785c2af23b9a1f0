import { describe, expect, it } from 'vitest';
import { judgeChecks, type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import compressionBlocks from '../../src/checks/compression-blocks.ts';
import { labCube } from '../../src/colour/lab.ts';
import { encodeSrgb } from '../../src/colour/srgb.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { cropRaster } from '../../src/raster/crop.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { readArtwork } from '../../src/read-artwork.ts';
import { paintPhoto, pngOf, scaled, throughJpeg } from '../photo-like-art.ts';
import { artworkOf, CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';
import { makeByWitness, requireWitness } from '../witness.ts';
import { deepen } from './colour-jobs.ts';
import { DEGENERATE_ART } from './degenerate-art.ts';
import { PLATE } from './jobs.ts';

const WIDTH_MM = 71;

async function judge(art: Raster | Artwork, changes: Partial<PrintRequest> = {}) {
  const artwork = 'raster' in art ? art : artworkOf(art);
  const request = { blank: PLATE, widthMm: WIDTH_MM, ...changes };
  const pictured = await pictureArtwork(artwork, request);
  const [outcome] = await judgeChecks(artwork, pictured, request, [compressionBlocks]);
  return outcome!;
}
async function findingOf(art: Raster | Artwork, changes: Partial<PrintRequest> = {}) {
  const outcome = await judge(art, changes);
  if (outcome.status !== 'found') throw new Error(`expected a finding, received ${JSON.stringify(outcome)}`);
  expect(outcome.findings).toHaveLength(1);
  return outcome.findings[0]!;
}

const codeOfLightness = (lightness: number) => encodeSrgb(labCube((lightness + 16) / 116)) * 65535;

/** Blocks of 8 x 8 px, each darker or lighter than L* 60 by half of `step` by chance, with a little grain; 16 bits, so that nothing is rounded. */
function blocksOf(step: number): Raster {
  const chance = seededNumbers(12);
  const signs = Array.from({ length: 60 * 60 }, () => (chance() < 0.5 ? -1 : 1));
  const grain = seededNumbers(4);
  const raster = deepen(paintRaster(480, 480, () => GREEN));
  for (let i = 0; i < 480 * 480; i += 1) {
    const block = Math.floor(i / 480 / 8) * 60 + Math.floor((i % 480) / 8);
    const code = codeOfLightness(60 + (signs[block]! * step) / 2 + (grain() - 0.5) * 0.2);
    raster.data.set([code, code, code, 65535], 4 * i);
  }
  return raster;
}

describe('compression-blocks', () => {
  // Half of the borders lie between equal blocks: the root mean square of the steps is step / sqrt(2).
  it.each([
    [1.1, 'passed'],
    [1.9, 'found'],
    [4, 'found'],
  ])('blocks that differ by %d L*: %s', async (step, expected) => {
    const outcome = await judge(blocksOf(step), { widthMm: 40 });
    expect(outcome.status).toBe(expected);
    if (outcome.status !== 'found') return;
    const [{ actual, expected: limit, facts }] = outcome.findings as [(typeof outcome.findings)[0]];
    expect(Math.abs(actual!.value / (step / Math.SQRT2) - 1)).toBeLessThan(0.1);
    expect(limit).toEqual({ max: 1, unit: 'L*', from: 'practice:visible-step' });
    expect(facts.pitchPx).toBeCloseTo(8, 2);
    expect(facts.sharePercent).toBeGreaterThan(90);
  });

  it.each([
    [1, 'cubic'],
    [1.37, 'cubic'],
    [2, 'lanczos3'],
    [3.3, 'mitchell'],
  ] as const)(
    'a JPEG of quality 10, enlarged %d x by %s: pitch in px and on the blank',
    async (factor, kernel) => {
      const blocks = await throughJpeg(paintPhoto('things'), 10);
      const { facts, severity } = await findingOf(await scaled(blocks, factor, kernel));
      expect(severity).toBe('advice');
      expect(Math.abs(Number(facts.pitchPx) / (8 * factor) - 1)).toBeLessThan(0.005);
      // However it is enlarged, a block is 8 of 840 px of the width.
      expect(Math.abs(Number(facts.pitchMm) / ((8 / 840) * WIDTH_MM) - 1)).toBeLessThan(0.005);
    },
  );

  it('lets good JPEGs and what was never saved as one pass', async () => {
    for (const scene of ['clouds', 'things', 'meadow'] as const) {
      expect((await judge(paintPhoto(scene))).status).toBe('passed');
      expect((await judge(await throughJpeg(paintPhoto(scene), 90))).status).toBe('passed');
      expect((await judge(await scaled(paintPhoto(scene), 3, 'cubic'))).status).toBe('passed');
    }
  });

  it('agrees on files that ImageMagick compressed, enlarged and saved again', {
    timeout: 60_000,
  }, async (context) => {
    requireWitness(context, 'convert');
    const png = { 'art.png': await pngOf(paintPhoto('things')) };
    const through = async (quality: number, percent: number) => {
      const jpeg = makeByWitness(
        'convert',
        ['art.png', '-quality', `${quality}`, 'small.jpg'],
        png,
        'small.jpg',
      );
      const resize = ['small.jpg', '-filter', 'Catrom', '-resize', `${percent}%`, 'large.png'];
      return readArtwork(makeByWitness('convert', resize, { 'small.jpg': jpeg }, 'large.png'));
    };
    const strong = await findingOf(await through(10, 175));
    expect(Math.abs(Number(strong.facts.pitchPx) / 14 - 1)).toBeLessThan(0.005);
    expect((await judge(await through(92, 175))).status).toBe('passed');
  });

  it('says where, wherever the grid begins', async () => {
    const clean = paintPhoto('things');
    const blocks = await throughJpeg(clean, 8);
    const cropped = cropRaster(blocks, { x: 5, y: 2, width: 830, height: 590 });
    const right = paintRaster(830, 590, (x, y) => {
      const { data, widthPx } = x < 400 ? clean : cropped;
      return [...data.subarray((y * widthPx + x) * 4, (y * widthPx + x) * 4 + 4)] as [
        number,
        number,
        number,
        number,
      ];
    });
    const { place, facts } = await findingOf(right);
    // To a tile of 8 blocks.
    expect(place!.px.x).toBeGreaterThanOrEqual(400 - 64);
    expect(place!.mm.x).toBeGreaterThan(14 + (336 / 830) * WIDTH_MM);
    expect(facts.sharePercent).toBeLessThan(60);
  });

  it('says nothing of blocks too fine to be seen from where the blank is looked at', async () => {
    const blocks = await throughJpeg(paintPhoto('things'), 8);
    // Two minutes of arc at 305 mm are 0.177 mm.
    expect((await judge(blocks, { widthMm: (0.185 * 840) / 8 })).status).toBe('found');
    expect(await judge(blocks, { widthMm: (0.17 * 840) / 8 })).toMatchObject({
      status: 'passed',
      facts: { pitchPx: expect.closeTo(8, 1) },
    });
  });

  it('sees 16 bits and gray alike, and skips inks and nothing', async () => {
    const blocks = await throughJpeg(paintPhoto('things'), 8);
    const first = await findingOf(blocks);
    expect((await findingOf(deepen(blocks))).facts.pitchPx).toBeCloseTo(Number(first.facts.pitchPx), 6);
    const data = Uint8Array.from({ length: blocks.data.length / 4 }, (_, i) => blocks.data[4 * i]!);
    await findingOf({ ...blocks, model: 'gray', hasAlpha: false, data });
    expect((await judge(paintRaster(9, 9, () => CLEAR))).status).toBe('skipped');
  });

  it.each([
    [0, 'skipped'],
    [1, 'found'],
  ])('takes no grid of a drawing for blocks: with %d pictures in it %s', async (unplacedPictures, status) => {
    const drawn = artworkOf(await throughJpeg(paintPhoto('things'), 8));
    const vector = { textElements: 0, outsideReferences: [], pictures: [], unplacedPictures };
    expect((await judge({ ...drawn, format: 'svg', vector })).status).toBe(status);
  });

  it.each(DEGENERATE_ART)('passes %s', async (_, raster) => {
    expect((await judge(raster, { widthMm: raster.widthPx === 1 ? 1 : 50 })).status).toBe('passed');
  });
});
