import { describe, expect, it } from 'vitest';
import { judgeChecks, type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import banding from '../../src/checks/banding.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { GRADED_MM, type Gradient, graded } from '../graded-art.ts';
import { artworkOf, CLEAR, paintRaster } from '../pictures.ts';
import { deepen } from './colour-jobs.ts';
import { DEGENERATE_ART } from './degenerate-art.ts';
import { PLATE } from './jobs.ts';

async function judge(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const artwork = artworkOf(raster);
  const request = { blank: PLATE, widthMm: GRADED_MM, ...changes };
  const pictured = await pictureArtwork(artwork, request);
  const [outcome] = await judgeChecks(artwork, pictured, request, [banding]);
  return outcome!;
}
async function findingOf(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const outcome = await judge(raster, changes);
  if (outcome.status !== 'found') throw new Error(`expected a finding, received ${JSON.stringify(outcome)}`);
  expect(outcome.findings.map(({ code, severity }) => [code, severity])).toEqual([['steps', 'advice']]);
  return outcome.findings[0]!;
}

const stair = (changes: Partial<Gradient> = {}) => graded({ step: 2.5, bandMm: 2, degrees: 0, ...changes });

describe('banding', () => {
  it.each([
    [2, 2, 0],
    [4, 3, 90],
    [3, 2, 35],
    [2.5, 1.5, 60],
  ])(
    'says how high and how wide steps of %d L* every %d mm at %d degrees are',
    async (step, bandMm, degrees) => {
      const { actual, expected, facts } = await findingOf(graded({ step, bandMm, degrees }));
      // One code of 255 is up to 0.45 L*, half of it a rounding at each end.
      expect(Math.abs(actual!.value - step)).toBeLessThan(0.25);
      expect(expected).toEqual({ max: 1, unit: 'L*', from: 'practice:visible-step' });
      expect(Math.abs(Number(facts.bandMm) / bandMm - 1)).toBeLessThan(0.15);
      expect(facts.areaMm2).toBeGreaterThan(0.6 * GRADED_MM ** 2);
    },
  );

  it('at the limits of lightness and length, by the print size', async () => {
    expect((await judge(stair({ step: 0.8 }))).status).toBe('passed');
    expect((await judge(stair({ step: 1.3 }))).status).toBe('found');
    expect((await judge(stair({ bandMm: 0.8 }))).status).toBe('passed');
    expect((await judge(stair({ bandMm: 1.2 }))).status).toBe('found');
    expect((await judge(stair({ bandMm: 1.2 }), { widthMm: 40 })).status).toBe('passed');
  });

  it('knows drawings in flat colours from gradients: four tones are shades, five a stair', async () => {
    const tones = (count: number) =>
      paintRaster(600, 600, (x) => {
        const code = 90 + 15 * Math.min(count - 1, Math.floor(x / 60));
        return [code, code, code, 255];
      });
    expect((await judge(tones(4))).status).toBe('passed');
    expect((await judge(tones(5))).status).toBe('found');
    const wide = paintRaster(600, 600, (x) => {
      const code = 40 + 40 * Math.floor(x / 120);
      return [code, code, code, 255];
    });
    expect((await judge(wide)).status).toBe('passed');
  });

  it('says where', async () => {
    const [smooth, steps] = [graded({ step: 0, bandMm: 1, degrees: 0 }, 1), stair()];
    const both = paintRaster(600, 600, (x, y) => {
      const from = (y < 350 ? smooth : steps).data;
      return [...from.subarray((y * 600 + x) * 4, (y * 600 + x) * 4 + 4)] as [number, number, number, number];
    });
    const { place } = await findingOf(both);
    // 60 mm in the middle of 100; to a cell of 2 mm.
    expect(Math.abs(place!.mm.y - (20 + 35))).toBeLessThanOrEqual(2.1);
    expect(Math.abs(place!.mm.height - 25)).toBeLessThanOrEqual(2.1);
    expect(Math.abs(place!.px.y - 350)).toBeLessThanOrEqual(21);
  });

  it('lets less than a square centimetre be', async () => {
    const patch = (side: number) => {
      const steps = graded({ step: 2.5, bandMm: 1.2, degrees: 0 });
      return paintRaster(600, 600, (x, y) => {
        if (x >= side || y >= side) return [200, 200, 200, 255];
        return [...steps.data.subarray((y * 600 + x) * 4, (y * 600 + x) * 4 + 4)] as [
          number,
          number,
          number,
          number,
        ];
      });
    };
    expect((await judge(patch(80))).status).toBe('passed');
    expect((await judge(patch(140))).status).toBe('found');
  });

  it('sees 16 bits and gray alike, and skips nothing', async () => {
    const art = stair();
    await findingOf(deepen(art));
    const data = Uint8Array.from({ length: art.data.length / 4 }, (_, i) => art.data[4 * i]!);
    await findingOf({ ...art, model: 'gray', hasAlpha: false, data });
    // 16 bits between the same ends have no steps.
    const fine = deepen(art);
    for (let i = 0; i < 600 * 600; i += 1) fine.data.fill(15_000 + 50 * (i % 600), 4 * i, 4 * i + 3);
    expect((await judge(fine)).status).toBe('passed');
    expect((await judge(paintRaster(9, 9, () => CLEAR))).status).toBe('skipped');
  });

  it.each(DEGENERATE_ART)('passes %s', async (_, raster) => {
    expect((await judge(raster, { widthMm: raster.widthPx === 1 ? 1 : 50 })).status).toBe('passed');
  });
});
