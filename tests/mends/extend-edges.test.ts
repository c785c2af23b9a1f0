import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { checkArtwork, type PrintRequest, placeArtwork } from '../../src/check-artwork.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';
import { frameOf } from '../../src/job/art-frame.ts';
import { mendArtwork, reportMends } from '../../src/mend-artwork.ts';
import { EXTEND_HOW } from '../../src/mends/define-mend.ts';
import { channelsOf, type Raster } from '../../src/raster/raster.ts';
import { deepen, paintRgb } from '../checks/colour-jobs.ts';
import { codesOf, DISC, PLATE } from '../checks/jobs.ts';
import { artworkOf, CLEAR, paintRaster } from '../pictures.ts';

const ROUNDED: BlankRecord = {
  ...PLATE,
  id: 'test-rounded',
  outline: { shape: 'rounded-rect', widthMm: 100, heightMm: 80, cornerRadiusMm: 12 },
};
const HEXAGON: BlankRecord = {
  ...PLATE,
  id: 'test-hexagon',
  outline: {
    shape: 'polygon',
    widthMm: 100,
    heightMm: 86,
    pointsMm: [
      [25, 0],
      [75, 0],
      [100, 43],
      [75, 86],
      [25, 86],
      [0, 43],
    ],
  } as NonNullable<BlankRecord['outline']>,
};

/** Colours that say where they come from: red across, green down. */
const chart = (width: number, height: number) =>
  paintRgb(width, height, (x, y) => [
    Math.round((x / width) * 200),
    Math.round((y / height) * 200),
    (x + y) % 2 === 0 ? 40 : 90,
  ]);
const disc = (size: number) =>
  paintRaster(size, size, (x, y) =>
    Math.hypot(x + 0.5 - size / 2, y + 0.5 - size / 2) <= size / 2 ? [30, 120, 60, 255] : CLEAR,
  );

async function extend(raster: Raster, request: PrintRequest) {
  const given = artworkOf(raster);
  const asked = { ...request, mends: ['extend-edges'] };
  const before = await checkArtwork(given, asked);
  const mended = await mendArtwork(given, asked);
  const after = await checkArtwork(mended.artwork, mended.request);
  return { given, before, after, ...mended };
}

const cases: readonly (readonly [string, Raster, PrintRequest])[] = [
  ['square art as large as a square plate', chart(500, 500), { blank: PLATE, widthMm: 100 }],
  ['art with 1 mm of the 3', chart(510, 510), { blank: PLATE, widthMm: 102 }],
  ['art that is short on two sides', chart(530, 500), { blank: PLATE, widthMm: 106 }],
  ['moved art', chart(512, 512), { blank: PLATE, widthMm: 102.4, offsetMm: { x: 0.7, y: -0.4 } }],
  [
    'turned art',
    chart(300, 500),
    { blank: { ...PLATE, outline: { shape: 'rect', widthMm: 100, heightMm: 60 } }, widthMm: 100.5, turn: 90 },
  ],
  ['pixels that fit no millimetre', chart(317, 317), { blank: PLATE, widthMm: 101.3 }],
  ['rounded corners', chart(500, 400), { blank: ROUNDED, widthMm: 100.6 }],
  ['a round blank and round art', disc(606), { blank: DISC, widthMm: 101 }],
  ['a round blank and square art', chart(500, 500), { blank: DISC, widthMm: 101 }],
  ['a hexagon', chart(500, 430), { blank: HEXAGON, widthMm: 100.5 }],
  ['16 bits', deepen(chart(300, 300)), { blank: PLATE, widthMm: 101 }],
];

describe('extend-edges', () => {
  it.each(cases)('%s: bleed-cover passes, and nothing else is found', async (_, raster, request) => {
    const copy = raster.data.slice();
    const { before, after, mends } = await extend(raster, request);
    const short = 'bleed-cover/short:error';
    expect(codesOf(before.outcomes)).toContain(short);
    const allowed = codesOf(before.outcomes).filter((code) => code !== short);
    expect(codesOf(after.outcomes).filter((code) => !allowed.includes(code))).toEqual([]);
    const [entry] = reportMends(mends, after.outcomes);
    expect(entry).toMatchObject({ mend: 'extend-edges', largestAlpha: 255, mended: ['bleed-cover/short'] });
    expect(entry!.inventedMm).toBeGreaterThan(0);
    // The bleed itself, and a pixel within the edge from which art is followed.
    expect(entry!.inventedMm).toBeLessThanOrEqual(3 + 0.4);
    expect(raster.data).toEqual(copy);
  });

  it.each(cases)(
    '%s: the art stays where it was, as large as it was, and nothing inside the edge changes',
    async (_, raster, request) => {
      const { given, artwork, before, after } = await extend(raster, request);
      const [was, is] = [before.job!, after.job!];
      expect(is.effectivePpi.x).toBeCloseTo(was.effectivePpi.x, 6);
      expect(is.effectivePpi.y).toBeCloseTo(was.effectivePpi.y, 6);
      const origin = frameOf(is).toPx(frameOf(was).toMm({ x: 0, y: 0 }));
      expect(origin.x).toBeCloseTo(Math.round(origin.x), 6);
      expect(origin.y).toBeCloseTo(Math.round(origin.y), 6);
      const frame = frameOf(is);
      const [old, grown] = [given.raster, artwork.raster];
      const samples = channelsOf(old) - (old.hasAlpha ? 1 : 0);
      const changedInside: string[] = [];
      for (let y = 0; y < grown.heightPx; y++)
        for (let x = 0; x < grown.widthPx; x++) {
          const mm = frame.toMm({ x: x + 0.5, y: y + 0.5 });
          const [ox, oy] = [x - Math.round(origin.x), y - Math.round(origin.y)];
          const there = ox >= 0 && oy >= 0 && ox < old.widthPx && oy < old.heightPx;
          const at = (y * grown.widthPx + x) * (samples + 1);
          const from = (oy * old.widthPx + ox) * channelsOf(old);
          const visible = grown.data[at + samples] !== 0;
          const wasVisible = there && (!old.hasAlpha || old.data[from + samples] !== 0);
          const same =
            visible === wasVisible &&
            (!visible || [...Array(samples).keys()].every((k) => grown.data[at + k] === old.data[from + k]));
          if (!same && distanceInside(is.blank.edge, mm.x, mm.y) > 1e-9) changedInside.push(`${x},${y}`);
        }
      expect(changedInside).toEqual([]);
    },
  );

  it.each(EXTEND_HOW)('%s: mending twice changes nothing more', async (how) => {
    // All ways share what decides where; one of each kind of outline is enough.
    for (const [, raster, request] of cases.filter((_, i) => [1, 3, 6, 7].includes(i))) {
      const first = await extend(raster, { ...request, extend: how });
      const again = await mendArtwork(first.artwork, first.request);
      expect(again.mends).toEqual([]);
      expect(again.artwork.raster).toBe(first.artwork.raster);
    }
  });

  it('goes on with the last pixels, or mirrored at the rim', async () => {
    // 5 px/mm; the art ends on the edge, so that 15 px are invented on each side.
    const rowOf = async (how: 'edge' | 'reflect') => {
      const { artwork } = await extend(chart(500, 500), { blank: PLATE, widthMm: 100, extend: how });
      const { data, widthPx } = artwork.raster;
      expect(widthPx).toBe(530);
      return [...Array(widthPx).keys()].map((x) => data[(265 * widthPx + x) * 4]!);
    };
    const edge = await rowOf('edge');
    expect(new Set(edge.slice(0, 15)).size).toBe(1);
    const reflect = await rowOf('reflect');
    for (let i = 2; i < 15; i++) expect(Math.abs(reflect[14 - i]! - reflect[15 + i]!)).toBeLessThanOrEqual(1);
  });

  it.each([
    ['art that keeps clear of the edge', chart(400, 400), { blank: PLATE, widthMm: 80 }],
    ['art that covers the bleed', chart(530, 530), { blank: PLATE, widthMm: 106 }],
    ['a blank without bleed', chart(500, 500), { blank: PLATE, widthMm: 100, bleedMm: 0 }],
    ['nothing visible', paintRaster(10, 10, () => CLEAR), { blank: PLATE }],
    ['white on a white base', paintRgb(500, 500, () => [255, 255, 255]), { blank: PLATE, widthMm: 100 }],
  ] as const)('%s is left as it is', async (_, raster, request) => {
    const {
      artwork,
      request: after,
      mends,
    } = await mendArtwork(artworkOf(raster), { ...request, mends: ['extend-edges'] });
    expect(mends).toEqual([]);
    expect(artwork.raster).toBe(raster);
    expect(after.widthMm).toBe((request as PrintRequest).widthMm);
  });

  it('threads and specks on the edge do not stop it', async () => {
    const threads = paintRaster(510, 510, (x, y) =>
      (x * 7 + y * 13) % 11 === 0 ? [30, 120, 60, 255] : CLEAR,
    );
    const { mends } = await extend(threads, { blank: DISC, widthMm: 102, extend: 'blur' });
    expect(mends).toHaveLength(1);
  });

  it('makes a bleed wherever the art lies over the edge, by any way, and asks for no more of it (law)', async () => {
    const asked = fc.record({
      how: fc.constantFrom(...EXTEND_HOW),
      blank: fc.constantFrom(PLATE, DISC, ROUNDED),
      overMm: fc.integer({ min: 4, max: 24 }).map((quarters) => quarters / 4),
      x: fc.integer({ min: -9, max: 9 }).map((tenths) => tenths / 10),
      y: fc.integer({ min: -9, max: 9 }).map((tenths) => tenths / 10),
    });
    await fc.assert(
      fc.asyncProperty(asked, async ({ how, blank, overMm, x, y }) => {
        const { widthMm, heightMm } = blank.outline!;
        const longer = Math.max(widthMm, heightMm);
        // Square art over the whole edge, by half of `overMm` on each side less the offset.
        const { after, mends, artwork, request } = await extend(chart(260, 260), {
          blank,
          widthMm: longer + overMm + 2 * Math.max(Math.abs(x), Math.abs(y)),
          offsetMm: { x, y },
          extend: how,
        });
        expect(codesOf(after.outcomes).filter((code) => code.startsWith('bleed-cover'))).toEqual([]);
        for (const { inventedMm } of reportMends(mends, after.outcomes))
          expect(inventedMm).toBeLessThanOrEqual(3 + 0.5);
        const again = await mendArtwork(artwork, request);
        expect(again.mends).toEqual([]);
      }),
      { numRuns: 20, seed: 6 },
    );
  });

  it('only where art reaches the edge: a leaf that crosses it grows there alone', async () => {
    const leaf = paintRaster(520, 520, (x, y) =>
      y > 200 && y < 300 && x < 400
        ? [30, 120, 60, 255]
        : x > 100 && x < 420 && y > 100 && y < 420
          ? [200, 80, 40, 255]
          : CLEAR,
    );
    const { after, artwork, mends } = await extend(leaf, {
      blank: PLATE,
      widthMm: 84,
      offsetMm: { x: -9, y: 0 },
    });
    expect(codesOf(after.outcomes).filter((code) => code.startsWith('bleed-cover'))).toEqual([]);
    // 100 px tall, at most 3 mm wide.
    expect(mends[0]!.areaMm2).toBeLessThan(4 * 22);
    expect(placeArtwork(artwork, { blank: PLATE }).job).not.toBeNull();
  });
});
