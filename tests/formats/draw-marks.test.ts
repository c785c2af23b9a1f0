import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawMarksOver } from '../../src/formats/draw-marks.ts';
import { drawnLength, drawSizedSvg } from '../../src/formats/draw-sized-svg.ts';
import { drawingToSvg } from '../../src/formats/drawing-to-svg.ts';
import { limitsWith } from '../../src/formats/limits.ts';
import type { Drawing } from '../../src/geometry/drawing.ts';
import { letter } from '../../src/lettering/letter.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { drawMarks } from './draw-marks-alone.ts';

const limits = limitsWith();
const black = { r: 0, g: 0, b: 0 };
const ppi300 = { x: 300, y: 300 };

/** Ink and its middle along an axis, in pixels: pixel 7 spans 7 to 8. */
function weigh({ data, widthPx, heightPx }: Raster) {
  let [ink, sumX, sumY] = [0, 0, 0];
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++) {
      const share = data[(y * widthPx + x) * 4 + 3]! / 255;
      ink += share;
      sumX += share * (x + 0.5);
      sumY += share * (y + 0.5);
    }
  return { ink, x: sumX / ink, y: sumY / ink };
}

describe('a drawing as pixels', () => {
  it('puts the middle of a tick of 0.25 mm within 0.1 px of its place, at 300 ppi', async () => {
    const place = fc.record({ x: fc.double({ min: 3, max: 14, noNaN: true }), upright: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(place, async ({ x, upright }) => {
        const across = (along: number) => (upright ? { x, y: along } : { x: along, y: x });
        const tick: Drawing = [
          { kind: 'line', from: across(3.1), to: across(13.1), widthMm: 0.25, colour: black },
        ];
        const seen = weigh(await drawMarks(tick, { widthPx: 200, heightPx: 200 }, ppi300, limits));
        const middle = across(8.1);
        expect(Math.abs(seen.x - (middle.x / 25.4) * 300)).toBeLessThan(0.1);
        expect(Math.abs(seen.y - (middle.y / 25.4) * 300)).toBeLessThan(0.1);
        // The amount of ink too: 10 mm by 0.25 mm.
        expect(seen.ink / ((10 * 0.25 * 300 * 300) / 25.4 ** 2)).toBeCloseTo(1, 1);
      }),
      { numRuns: 60, seed: 20 },
    );
  });

  it('puts the ends of a rectangle on their pixels, with a resolution for each axis', async () => {
    const bar: Drawing = [
      { kind: 'rect', rectMm: { x: 1, y: 2, width: 10, height: 0.5 }, colour: { r: 200, g: 0, b: 10 } },
    ];
    // 20 px a mm across and 10 down.
    const drawn = await drawMarks(bar, { widthPx: 240, heightPx: 50 }, { x: 508, y: 254 }, limits);
    for (let y = 0; y < 50; y++)
      for (let x = 0; x < 240; x++) {
        const inside = x >= 20 && x < 220 && y >= 20 && y < 25;
        const at = (y * 240 + x) * 4;
        const expected = inside ? [200, 0, 10, 255] : [0, 0, 0, 0];
        if (drawn.data.slice(at, at + 4).join() !== expected.join())
          expect([x, y, ...drawn.data.slice(at, at + 4)]).toEqual([x, y, ...expected]);
      }
  });

  it('draws a large page in squares as it would at once', async () => {
    const shape = { widthPx: 2300, heightPx: 1100 };
    const drawing: Drawing = [
      { kind: 'line', from: { x: 1, y: 40.03 }, to: { x: 190, y: 40.03 }, widthMm: 0.25, colour: black },
      { kind: 'line', from: { x: 2, y: 3 }, to: { x: 180, y: 90 }, widthMm: 0.4, colour: black },
      {
        kind: 'path',
        path: letter('Seams are not seen', { capHeightMm: 20, at: { x: 10, y: 88 } }).path,
        colour: black,
      },
    ];
    const windowMm = { x: 0, y: 0, width: (2300 / 300) * 25.4, height: (1100 / 300) * 25.4 };
    const svg = drawingToSvg(drawing, windowMm, { width: drawnLength(2300), height: drawnLength(1100) });
    const atOnce = await drawSizedSvg(Buffer.from(svg), shape, limits);
    const inSquares = await drawMarks(drawing, shape, ppi300, limits);
    // The renderer takes 17 x 15 samples of a pixel: what a row of 15 weighs, since places are rounded to 1/256 pixel.
    let largest = 0;
    for (let i = 0; i < atOnce.data.length; i++)
      largest = Math.max(largest, Math.abs(atOnce.data[i]! - inSquares.data[i]!));
    expect(largest).toBeLessThanOrEqual(17);
  });

  it('draws dashes, and cuts what lies beyond the picture', async () => {
    const dashed: Drawing = [
      {
        kind: 'line',
        from: { x: -5, y: 1 },
        to: { x: 40, y: 1 },
        widthMm: 1,
        colour: black,
        dashesMm: [1, 2],
      },
    ];
    const { data } = await drawMarks(dashed, { widthPx: 200, heightPx: 20 }, { x: 254, y: 254 }, limits);
    const alphas = [5, 15, 25, 35, 45].map((x) => data[(10 * 200 + x) * 4 + 3]);
    // From -5 on: 1 mm of ink, 2 mm without.
    expect(alphas).toEqual([0, 255, 0, 0, 255]);
  });
});

describe('a drawing over a picture', () => {
  const bar: Drawing = [
    { kind: 'rect', rectMm: { x: 1, y: 1, width: 1.05, height: 1 }, colour: { r: 0, g: 90, b: 255 } },
  ];
  const tenPerMm = { x: 254, y: 254 };

  it.each([
    [8, false],
    [8, true],
    [16, false],
    [16, true],
  ] as const)('leaves every other pixel as it is: %i bit, alpha %s', async (depth, hasAlpha) => {
    const page = createRaster({ widthPx: 40, heightPx: 30, model: 'rgb', hasAlpha, depth });
    for (let i = 0; i < page.data.length; i++) page.data[i] = (i * 37) % (depth === 8 ? 256 : 65536);
    const before = page.data.slice();
    const drawn = await drawMarksOver(page, bar, tenPerMm, limits);
    expect(page.data).toEqual(before);
    const { channels, full } = { channels: hasAlpha ? 4 : 3, full: depth === 8 ? 255 : 65535 };
    for (let y = 0; y < 30; y++)
      for (let x = 0; x < 40; x++) {
        const at = (y * 40 + x) * channels;
        const pixel = [...drawn.data.slice(at, at + channels)];
        const covered = y >= 10 && y < 20 ? (x >= 10 && x < 20 ? 1 : x === 20 ? 0.5 : 0) : 0;
        if (covered === 0) expect(pixel).toEqual([...before.slice(at, at + channels)]);
        if (covered === 1)
          expect(pixel).toEqual([0, Math.round((90 / 255) * full), full, ...(hasAlpha ? [full] : [])]);
        if (covered === 0.5 && !hasAlpha)
          expect(Math.abs(pixel[2]! - (full + before[at + 2]!) / 2)).toBeLessThan(full / 100);
      }
  });

  it('takes no picture whose colours it could not keep', async () => {
    const gray = createRaster({ widthPx: 40, heightPx: 30, model: 'gray', hasAlpha: false, depth: 8 });
    await expect(drawMarksOver(gray, bar, tenPerMm, limits)).rejects.toThrow('rgb raster');
  });
});
