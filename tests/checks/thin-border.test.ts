import { describe, expect, it } from 'vitest';
import { judgeChecks, type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import thinBorder from '../../src/checks/thin-border.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { ART_MM, framed } from '../framed-art.ts';
import { artworkOf, CLEAR, GREEN, paintRaster } from '../pictures.ts';
import { DISC, PLATE } from './jobs.ts';

async function judge(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const artwork = artworkOf(raster);
  const request = { blank: PLATE, widthMm: ART_MM, ...changes };
  const pictured = await pictureArtwork(artwork, request);
  const [outcome] = await judgeChecks(artwork, pictured, request, [thinBorder]);
  return outcome!;
}
const distanceOf = async (raster: Raster, changes: Partial<PrintRequest> = {}) => {
  const outcome = await judge(raster, changes);
  if (outcome.status !== 'found') return outcome.status;
  expect(outcome.findings).toHaveLength(1);
  expect(outcome.findings[0]).toMatchObject({ code: 'narrow', severity: 'advice' });
  return outcome.findings[0]!.actual!.value;
};

describe('thin-border', () => {
  it.each([0.5, 1, 2, 4, 5.5, 5.8])('measures a frame at %d mm to two pixels', async (distance) => {
    expect(Math.abs(Number(await distanceOf(framed(distance, 1))) - distance)).toBeLessThan(0.17);
  });

  it.each([6.2, 7, 12])('lets a frame at %d mm be', async (distance) => {
    expect(await distanceOf(framed(distance, 1))).toBe('passed');
  });

  it('sees a frame on a texture whose own steps are larger', async () => {
    expect(Number(await distanceOf(framed(3, 0.5, 'grain')))).toBeCloseTo(3, 0);
    expect(await distanceOf(framed(7, 0.5, 'grain'))).toBe('passed');
  });

  it('takes a border that bleeds as the strip that is left of it', async () => {
    expect(Number(await distanceOf(framed(-3, 7)))).toBeCloseTo(4, 0);
    expect(await distanceOf(framed(-3, 11))).toBe('passed');
  });

  it('sees bare paper round art that ends before the edge', async () => {
    const solid = paintRaster(400, 400, () => GREEN);
    expect(Number(await distanceOf(solid, { widthMm: 92 }))).toBeCloseTo(4, 1);
    expect(await distanceOf(solid, { widthMm: 86 })).toBe('passed');
    expect(await distanceOf(solid)).toBe('passed');
  });

  it('follows a round edge, and does not take a square in it for parallel', async () => {
    expect(Number(await distanceOf(framed(3, 0.5, 'waves', 'disc'), { blank: DISC }))).toBeCloseTo(3, 0);
    expect(await distanceOf(framed(3, 0.5, 'waves', 'plate'), { blank: DISC })).toBe('passed');
  });

  it('says that it was skipped where it cannot see', async () => {
    const nothing = await judge(
      paintRaster(4, 4, () => CLEAR),
      { widthMm: 4 },
    ).catch(() => null);
    expect(nothing?.status).toBe('skipped');
    const small = { ...PLATE, outline: { shape: 'rect', widthMm: 12, heightMm: 12 } } as const;
    expect(
      (
        await judge(
          paintRaster(40, 40, () => GREEN),
          { blank: small, widthMm: 12 },
        )
      ).status,
    ).toBe('skipped');
  });

  it.each([
    [1, 1],
    [1, 300],
  ])('has an answer for art of %d x %d px', async (width, height) => {
    const outcome = await judge(
      paintRaster(width, height, () => GREEN),
      { widthMm: 1 },
    );
    expect(outcome.status).toBe('passed');
  });
});
