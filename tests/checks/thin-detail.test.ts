import { describe, expect, it } from 'vitest';
import { judgeChecks, type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import thinDetail from '../../src/checks/thin-detail.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { artworkOf, CLEAR, GREEN, paintRaster } from '../pictures.ts';
import { bold, STROKED_MM, stroked } from '../stroked-art.ts';
import { deepen } from './colour-jobs.ts';
import { PLATE } from './jobs.ts';

async function judge(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const artwork = artworkOf(raster);
  const request = { blank: PLATE, widthMm: STROKED_MM, ...changes };
  const pictured = await pictureArtwork(artwork, request);
  const [outcome] = await judgeChecks(artwork, pictured, request, [thinDetail]);
  return outcome!;
}
async function codes(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const outcome = await judge(raster, changes);
  if (outcome.status !== 'found') return outcome.status;
  return outcome.findings.map(({ code, severity }) => `${code}:${severity}`).join(' ');
}

const DARK = 'thin-strokes:advice';
const LIGHT = 'thin-gaps:advice';

describe('thin-detail', () => {
  it.each([
    [0.21, 0, 255, DARK],
    [0.29, 0, 255, 'passed'],
    [0.42, 255, 0, LIGHT],
    [0.58, 255, 0, 'passed'],
    // What is thin for light strokes is not for dark ones, nor on a ground with little dye.
    [0.42, 0, 255, 'passed'],
    [0.42, 255, 126, LIGHT],
    [0.42, 255, 132, 'passed'],
  ])('a stroke of %d mm, %d on %d', async (width, ink, ground, expected) => {
    for (const degrees of [0, 17, 45, 90])
      expect(await codes(stroked(width, degrees, ink, ground))).toBe(expected);
  });

  it('judges at the print size, by the blank where it says so', async () => {
    const art = stroked(0.3, 0, 0, 255);
    expect(await codes(art)).toBe('passed');
    expect(await codes(art, { widthMm: 30 })).toBe(DARK);
    const rough = { ...PLATE, smallestStrokeMm: { positive: 0.5, reversed: 1 } };
    const outcome = await judge(art, { blank: rough });
    expect(outcome).toMatchObject({
      findings: [{ code: 'thin-strokes', expected: { min: 0.5, unit: 'mm', from: 'blank:test-plate' } }],
    });
  });

  it('counts the strokes and says where the largest lies', async () => {
    const outcome = await judge(stroked(0.15, 0, 0, 255));
    if (outcome.status !== 'found') throw new Error('expected a finding');
    const { facts, place, expected } = outcome.findings[0]!;
    expect(facts.count).toBe(3);
    // 3 x 24 mm of 0.15 mm; pixels of 0.085 mm round the width up or down by one.
    expect(Number(facts.areaMm2)).toBeGreaterThan(3 * 24 * 0.08);
    expect(Number(facts.areaMm2)).toBeLessThan(3 * 24 * 0.26);
    expect(place!.mm.width).toBeCloseTo(24, 0);
    expect(expected).toMatchObject({ from: 'family:ceramic-tile' });
  });

  it('tells of both at once', async () => {
    const [dark, light] = [stroked(0.15, 0, 0, 255), stroked(0.3, 0, 255, 0)];
    const side = dark.widthPx;
    const both = paintRaster(side, 2 * side, (x, y) => {
      const code = (y < side ? dark : light).data[((y % side) * side + x) * 4]!;
      return [code, code, code, 255];
    });
    expect(await codes(both)).toBe(`${DARK} ${LIGHT}`);
  });

  it.each([
    [0, 255],
    [255, 0],
  ])('lets corners and curves of bold shapes be, %d on %d', async (ink, ground) => {
    expect(await codes(bold(ink, ground))).toBe('passed');
  });

  it('sees 16 bits, gray and cut-out art alike', async () => {
    const art = stroked(0.15, 30, 0, 255);
    const single = Uint8Array.from({ length: art.widthPx * art.heightPx }, (_, i) => art.data[4 * i]!);
    expect(await codes(deepen(art))).toBe(DARK);
    expect(await codes({ ...art, model: 'gray', hasAlpha: false, data: single })).toBe(DARK);
    const cut = paintRaster(art.widthPx, art.heightPx, (x, y) => {
      const corner = (x < 9 && y < 9) || (x > art.widthPx - 9 && y > art.heightPx - 9);
      return corner ? GREEN : [0, 0, 0, 255 - single[y * art.widthPx + x]!];
    });
    expect(await codes(cut)).toBe(DARK);
  });

  it('says that it was skipped where nothing is visible', async () => {
    expect(await codes(paintRaster(4, 4, () => CLEAR))).toBe('skipped');
  });

  it.each<[string, Raster]>([
    ['one pixel', paintRaster(1, 1, () => GREEN)],
    ['one colour', paintRaster(200, 200, () => GREEN)],
    ['all haze', paintRaster(200, 200, () => [0, 0, 0, 8])],
    ['one pixel wide', paintRaster(1, 300, () => GREEN)],
  ])('has an answer for %s', async (_, raster) => {
    expect(await codes(raster, raster.widthPx === 1 ? { widthMm: 1 } : {})).toBe('passed');
  });

  it('takes a checkerboard of single pixels for what it is', async () => {
    const board = paintRaster(480, 480, (x, y) => ((x + y) % 2 ? GREEN : CLEAR));
    expect(await codes(board)).toBe(LIGHT);
  });
});
