import { describe, expect, it } from 'vitest';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { judgeChecks, type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import edgeDetail from '../../src/checks/edge-detail.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { artworkOf, CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';
import { grayOf, type Mark, paintRim, RIM_ART_MM } from '../rim-art.ts';
import { deepen } from './colour-jobs.ts';
import { blankOf, DISC, PLATE } from './jobs.ts';

async function judge(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const artwork = artworkOf(raster);
  const request = { blank: PLATE, widthMm: RIM_ART_MM, ...changes };
  const pictured = await pictureArtwork(artwork, request);
  const [outcome] = await judgeChecks(artwork, pictured, request, [edgeDetail]);
  return outcome!;
}
async function findings(raster: Raster, changes: Partial<PrintRequest> = {}) {
  const outcome = await judge(raster, changes);
  expect(['found', 'passed']).toContain(outcome.status);
  return outcome.status === 'found' ? outcome.findings : [];
}
const codes = async (raster: Raster, changes: Partial<PrintRequest> = {}) =>
  (await findings(raster, changes)).map(({ code, severity }) => `${code}:${severity}`);

const TEXT: Mark = { what: 'text', sizeMm: 4, gapMm: 8 };
const HOLED: BlankRecord = {
  ...PLATE,
  holes: [{ use: 'hang', shape: 'circle', diameterMm: 4, xMm: 50, yMm: 12 }],
};
const BEVELLED: BlankRecord = { ...PLATE, bevelMm: 2 };
/** A bevel and a hole at once: one change of the art gives one code. */
const BOTH: BlankRecord = { ...HOLED, ...BEVELLED, holes: HOLED.holes! };

describe('edge-detail', () => {
  it.each<[string, Partial<Mark>, readonly string[]]>([
    ['nothing', {}, []],
    ['3 mm from the edge', { gapMm: 3 }, ['near-edge:advice']],
    ['on the bevel', { gapMm: 1 }, ['on-bevel:advice']],
    ['under the hole', { side: 'top', gapMm: 10 }, ['at-hole:advice']],
    ['beside the hole', { side: 'top', gapMm: 15.5 }, ['at-hole:advice']],
    ['clear of the hole', { side: 'top', gapMm: 17 }, []],
  ])('finds one thing where one is wrong: %s', async (_, change, expected) => {
    expect(await codes(await paintRim([{ ...TEXT, ...change }]), { blank: BOTH })).toEqual(expected);
  });

  it.each([0.5, 1.5, 3, 4.4])('tells how near it comes, to half a millimetre: %d mm', async (gapMm) => {
    const [found] = await findings(await paintRim([{ ...TEXT, gapMm }]));
    expect(found!.actual!.value).toBeGreaterThan(gapMm - 0.5);
    expect(found!.actual!.value).toBeLessThan(gapMm + 0.5);
    expect(found!.expected).toEqual({ min: 5, unit: 'mm', from: 'blank:test-plate' });
  });

  it.each([5, 5.5, 9])('lets detail be that ends %d mm from the edge', async (gapMm) => {
    expect(await codes(await paintRim([{ ...TEXT, gapMm }]))).toEqual([]);
  });

  it('has its limit from 25 L* on', async () => {
    const at = (contrast: number) => paintRim([{ ...TEXT, gapMm: 2 }], { ink: grayOf(85 - contrast) });
    expect(await codes(await at(22))).toEqual([]);
    expect(await codes(await at(28))).toEqual(['near-edge:advice']);
  });

  it('names place and size', async () => {
    const [found] = await findings(await paintRim([{ what: 'emblem', sizeMm: 10, gapMm: 2, side: 'right' }]));
    const { mm, px } = found!.place!;
    // The emblem has its right end at 98 mm and its middle at 50; edges are known to half a millimetre.
    expect(Math.abs(mm.x + mm.width - 98)).toBeLessThan(0.6);
    expect(Math.abs(mm.y + mm.height / 2 - 50)).toBeLessThan(0.6);
    expect(Math.abs(Number(found!.facts.widthMm) - 10)).toBeLessThan(1.1);
    // 8 px a millimetre, 3 mm of bleed before the edge.
    expect(Math.abs(px.x + px.width - 101 * 8)).toBeLessThan(6);
  });

  it('counts several, and keeps zones apart', async () => {
    const marks: Mark[] = [
      { ...TEXT, gapMm: 3 },
      { ...TEXT, gapMm: 3.5, side: 'left' },
      { ...TEXT, gapMm: 12, side: 'top' },
    ];
    const found = await findings(await paintRim(marks), { blank: HOLED });
    expect(found.map(({ code, facts }) => [code, facts.count, facts.use])).toEqual([
      ['at-hole', 1, 'hang'],
      ['near-edge', 2, undefined],
    ]);
  });

  it('names a smaller size or an offset that clears it, only where the art still bleeds', async () => {
    const raster = await paintRim([{ ...TEXT, gapMm: 3 }]);
    const [fitting] = await findings(raster);
    expect(fitting!.facts).not.toHaveProperty('widthToClearMm');
    expect(fitting!.facts).not.toHaveProperty('offsetYMm');
    // Printed 120 mm wide the same text ends about 3.4 mm beyond the edge's 50 mm: 47 x 120 / 106 = 53.2.
    const marked = await paintRim([{ ...TEXT, gapMm: 9 }]);
    const [found] = await findings(marked, { widthMm: 120 });
    expect(found!.code).toBe('near-edge');
    const { widthToClearMm, offsetXMm, offsetYMm } = found!.facts as Record<string, number>;
    expect(await codes(marked, { widthMm: widthToClearMm! })).toEqual([]);
    expect(await codes(marked, { widthMm: 120, offsetMm: { x: offsetXMm!, y: offsetYMm! } })).toEqual([]);
    expect(Math.abs(offsetYMm!)).toBeLessThanOrEqual(7);
  });

  it('follows a round edge', async () => {
    expect(await codes(await paintRim([{ ...TEXT, gapMm: 6 }]), { blank: DISC })).toEqual([
      'near-edge:advice',
    ]);
    expect(await codes(await paintRim([{ ...TEXT, gapMm: 14 }]), { blank: DISC })).toEqual([]);
  });

  it('takes the bevel of a tile from its record', async () => {
    const raster = await paintRim([{ ...TEXT, gapMm: 0.5 }]);
    const [found] = await findings(raster, { blank: blankOf('tile-ceramic-4.25in'), widthMm: 114 });
    expect(found).toMatchObject({
      code: 'on-bevel',
      expected: { min: 1.5, from: 'blank:tile-ceramic-4.25in' },
    });
  });

  it('says that it was skipped where the art does not run over the edge, or cannot be judged', async () => {
    const raster = await paintRim([{ ...TEXT, gapMm: 3 }]);
    expect((await judge(raster, { widthMm: 98 })).status).toBe('skipped');
    expect((await judge(paintRaster(20, 20, () => CLEAR))).status).toBe('skipped');
    const white = await paintRim([TEXT], { ground: '#fff' });
    expect((await judge(white)).status).toBe('skipped');
  });

  it('runs where the art covers the edge and has too little bleed', async () => {
    const raster = await paintRim([{ ...TEXT, gapMm: 2 }]);
    expect(await codes(raster, { widthMm: 101 })).toEqual(['near-edge:advice']);
  });

  it.each<[string, () => Raster]>([
    ['one pixel', () => paintRaster(1, 1, () => GREEN)],
    ['one row', () => paintRaster(900, 1, () => GREEN)],
    ['one colour', () => paintRaster(300, 300, () => GREEN)],
    [
      'a checkerboard of single pixels',
      () => paintRaster(400, 400, (x, y) => ((x + y) % 2 ? GREEN : [240, 240, 240, 255])),
    ],
    [
      'noise',
      () => {
        const next = seededNumbers(4);
        return paintRaster(500, 500, () => [next() * 255, next() * 255, next() * 255, 255]);
      },
    ],
    ['16 bits', () => deepen(paintRaster(100, 100, (x) => [x, 2 * x, x, 255]))],
  ])('passes %s', async (_, paint) => {
    expect((await judge(paint(), { widthMm: RIM_ART_MM, heightMm: RIM_ART_MM })).status).toBe('passed');
  });

  it('has an answer for a blank with nothing left within its safe line', async () => {
    const small = { ...PLATE, outline: { shape: 'circle', widthMm: 9, heightMm: 9 } } as const;
    expect(
      (
        await judge(
          paintRaster(60, 60, () => GREEN),
          { blank: small, widthMm: 16 },
        )
      ).status,
    ).toBe('passed');
  });

  it.each([
    [0.05, 'passed'],
    [0.5, 'skipped'],
  ])('a bare %d of the right side: %s', async (share, status) => {
    const art = await paintRim([]);
    expect(art.hasAlpha).toBe(false);
    const data = art.data.slice();
    const [from, to] = [0.4, 0.4 + share].map((part) => Math.round(part * art.heightPx)) as [number, number];
    for (let y = from; y < to; y += 1)
      data.fill(255, 3 * (y * art.widthPx + Math.round(0.85 * art.widthPx)), 3 * (y + 1) * art.widthPx);
    expect((await judge({ ...art, data })).status).toBe(status);
  });
});
