import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resample } from '../../src/formats/resample.ts';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { wholeOf } from '../../src/raster/pad.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from '../../src/raster/raster.ts';
import { CLEAR, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { pixelAt } from '../raster/any-raster.ts';

const scaled = (raster: Raster, widthPx: number, heightPx: number) =>
  resample(raster, { rectPx: wholeOf(raster), widthPx, heightPx });

/** Sizes to which pictures of 120 x 100 are brought: reduced, enlarged, one axis each way, one axis only. */
const SIZES = [
  [97, 81],
  [49, 33],
  [11, 9],
  [1, 1],
  [121, 101],
  [371, 217],
  [60, 150],
  [150, 60],
  [120, 77],
] as const;

describe('resample', () => {
  it.each(SIZES)('keeps flat colour of every kind at %i x %i', async (widthPx, heightPx) => {
    for (const model of ['gray', 'rgb'] as const)
      for (const hasAlpha of [false, true])
        for (const depth of [8, 16] as const) {
          const raster = createRaster({ widthPx: 120, heightPx: 100, model, hasAlpha, depth });
          const channels = channelsOf(raster);
          const flat = [201, 90, 43, 128]
            .slice(0, channels)
            .map((value) => (value * fullScaleOf(raster)) / 255);
          for (let pixel = 0; pixel < raster.data.length; pixel += channels) raster.data.set(flat, pixel);
          const result = await scaled(raster, widthPx, heightPx);
          expect(result).toMatchObject({ widthPx, heightPx, model, hasAlpha, depth });
          // At 16 bits the library's whole-number weights miss a sum of 1 by up to 1 in 1000: a quarter of an 8-bit step.
          const tolerance = depth === 8 ? 0 : 64;
          let worst = 0;
          result.data.forEach((value, i) => {
            worst = Math.max(worst, Math.abs(value - flat[i % channels]!));
          });
          expect(worst).toBeLessThanOrEqual(tolerance);
        }
  });

  it.each(SIZES)('never shows what hides under clear pixels, at %i x %i', async (widthPx, heightPx) => {
    const number = seededNumbers(51);
    const pixels = Array.from({ length: 12000 }, (): Rgba => {
      const byte = () => Math.floor(number() * 256);
      return [byte(), byte(), byte(), number() < 0.5 ? 0 : byte()];
    });
    const dirty = paintRaster(120, 100, (x, y) => pixels[y * 120 + x]!);
    const clean = paintRaster(120, 100, (x, y) =>
      pixels[y * 120 + x]![3] === 0 ? CLEAR : pixels[y * 120 + x]!,
    );
    expect(await scaled(dirty, widthPx, heightPx)).toEqual(await scaled(clean, widthPx, heightPx));
  });

  it('draws no halo: over any background every printed colour lies between it and the art', async () => {
    const byte = fc.nat(255);
    const colour = fc.record({ r: byte, g: byte, b: byte });
    const size = fc.integer({ min: 1, max: 240 });
    await fc.assert(
      fc.asyncProperty(
        colour,
        colour,
        size,
        size,
        fc.boolean(),
        async (art, background, width, height, soft) => {
          // A disc with a hard edge, or with one that fades over 20 px; hidden colour is as unlike as can be.
          const raster = paintRaster(90, 90, (x, y) => {
            const inside = 40 - Math.hypot(x - 44.5, y - 44.5);
            const alpha = soft ? Math.min(Math.max(inside / 20, 0), 1) : inside > 0 ? 1 : 0;
            return alpha === 0
              ? [255 - art.r, 255 - art.g, 255 - art.b, 0]
              : [art.r, art.g, art.b, Math.round(alpha * 255)];
          });
          const printed = flattenRaster(await scaled(raster, width, height), background);
          const from = [art.r, art.g, art.b];
          const to = [background.r, background.g, background.b];
          const outside = printed.data.findIndex((value, i) => {
            const [a, b] = [from[i % 3]!, to[i % 3]!];
            return value < Math.min(a, b) || value > Math.max(a, b);
          });
          expect(outside).toBe(-1);
        },
      ),
      { seed: 52, numRuns: 150 },
    );
  });

  it('leaves flat colour exact beside a hard edge, where the library alone is off by 12 levels', async () => {
    const raster = paintRaster(200, 200, (x, y) =>
      x >= 50 && x < 150 && y >= 50 && y < 150 ? [200, 90, 40, 255] : [0, 255, 0, 0],
    );
    for (const side of [17, 50, 73, 81, 199, 317, 640]) {
      const { data } = await scaled(raster, side, side);
      const seen = new Set<string>();
      for (let pixel = 0; pixel < data.length; pixel += 4)
        if (data[pixel + 3]! > 0) seen.add(data.subarray(pixel, pixel + 3).join());
      expect([...seen]).toEqual(['200,90,40']);
    }
  });

  it('leaves no ghost ring: clear from two pixels outside a hard edge, opaque from two within', async () => {
    for (const side of [73, 81, 150, 317]) {
      const raster = paintRaster(200, 200, (x) => (x < 100 ? [10, 20, 30, 255] : CLEAR));
      const reduced = await scaled(raster, side, side);
      const scale = Math.max(1, side / 200);
      for (let x = 0; x < side; x++) {
        const outside = x + 0.5 - side / 2;
        const alpha = pixelAt(reduced, x, 5)[3];
        if (outside > 1.5 * scale) expect(alpha).toBe(0);
        if (outside < -1.5 * scale) expect(alpha).toBe(255);
      }
    }
  });

  it.each([
    [90, 400],
    [133, 399],
    [199, 250],
    [400, 90],
    [1001, 333],
    [201, 1700],
  ])('keeps the middle of a bar where it was, from 400 x 400 to %i x %i', async (widthPx, heightPx) => {
    // libvips by itself shifts by half an output pixel where it enlarges.
    const bar = { from: 150.0, to: 230.0 };
    const raster = paintRaster(400, 400, (x, y) => [
      x >= bar.from && x < bar.to ? 200 : 0,
      y >= bar.from && y < bar.to ? 200 : 0,
      0,
      255,
    ]);
    const { data } = await scaled(raster, widthPx, heightPx);
    const middle = (channel: number, at: (x: number, y: number) => number) => {
      let mass = 0;
      let moment = 0;
      for (let y = 0; y < heightPx; y++)
        for (let x = 0; x < widthPx; x++) {
          const value = data[(y * widthPx + x) * 4 + channel]!;
          mass += value;
          moment += value * (at(x, y) + 0.5);
        }
      return moment / mass;
    };
    // Clipped undershoot on both sides of the bar differs by phase: worth a few hundredths of a pixel.
    expect(Math.abs(middle(0, (x) => x) - (190 * widthPx) / 400)).toBeLessThan(
      0.06 * Math.max(1, widthPx / 400),
    );
    expect(Math.abs(middle(1, (_, y) => y) - (190 * heightPx) / 400)).toBeLessThan(
      0.06 * Math.max(1, heightPx / 400),
    );
  });

  it('takes nothing from outside the rectangle', async () => {
    const raster = paintRaster(60, 60, (x, y) =>
      x >= 20 && x < 40 && y >= 20 && y < 40 ? [0, 99, 0, 255] : [255, 0, 0, 255],
    );
    for (const [widthPx, heightPx] of [
      [9, 7],
      [20, 20],
      [33, 50],
    ] as const) {
      const { data } = await resample(raster, {
        rectPx: { x: 20, y: 20, width: 20, height: 20 },
        widthPx,
        heightPx,
      });
      expect(data.every((value, i) => value === [0, 99, 0, 255][i % 4])).toBe(true);
    }
  });

  it('agrees with the kernel written out in full, on photo-like art', async () => {
    const raster = paintRaster(120, 100, (x, y) => [
      128 + 90 * Math.sin(x / 9 + y / 17),
      128 + 90 * Math.sin(y / 7),
      128 + 80 * Math.cos((x + y) / 11),
      255,
    ]);
    for (const [widthPx, heightPx] of [
      [97, 81],
      [49, 41],
      [38, 30],
      [371, 217],
    ] as const) {
      const result = await scaled(raster, widthPx, heightPx);
      const exact = convolve(raster, widthPx, heightPx);
      let worst = 0;
      result.data.forEach((value, i) => {
        worst = Math.max(worst, Math.abs(value - Math.min(Math.max(exact[i]!, 0), 255)));
      });
      // The library rounds its weights to whole numbers and its rows to bytes before it does the columns.
      expect(worst).toBeLessThanOrEqual(1.6);
    }
  });

  it('agrees with it on textured art with hard and soft edges, over white', async () => {
    const raster = paintRaster(120, 100, (x, y) => {
      const inside = 45 - Math.hypot(x - 59.5, y - 49.5);
      const alpha = x < 60 ? (inside > 0 ? 255 : 0) : Math.min(Math.max(inside * 12, 0), 255);
      return [
        128 + 90 * Math.sin(x / 3),
        128 + 90 * Math.sin(y / 4),
        128 + 80 * Math.cos((x + y) / 5),
        alpha,
      ];
    });
    const premultiplied = createRaster({ ...raster, depth: 16 });
    raster.data.forEach((value, i) => {
      premultiplied.data[i] = i % 4 === 3 ? value * 257 : (value * raster.data[i - (i % 4) + 3]! * 257) / 255;
    });
    for (const [widthPx, heightPx] of [
      [97, 81],
      [49, 41],
      [38, 30],
      [371, 217],
    ] as const) {
      const result = await scaled(raster, widthPx, heightPx);
      const flat = flattenRaster(result, { r: 255, g: 255, b: 255 }).data;
      const exact = convolve(premultiplied, widthPx, heightPx);
      const worst = { inside: 0, edge: 0 };
      flat.forEach((value, i) => {
        const pixel = Math.floor(i / 3) * 4;
        const alpha = exact[pixel + 3]! / 65535;
        const shown = Math.min(Math.max(alpha, 0), 1);
        const colour = alpha <= 0 ? 0 : Math.min(Math.max(exact[pixel + (i % 3)]! / alpha / 257, 0), 255);
        const part = result.data[pixel + 3] === 255 && shown === 1 ? 'inside' : 'edge';
        worst[part] = Math.max(worst[part], Math.abs(value - (colour * shown + 255 * (1 - shown))));
      });
      // Inside an edge the library alone is off by up to 12. On the stairs of a hard edge it clips to bytes between
      // columns and rows, which moves a step of them by up to a twentieth of a pixel.
      expect(worst.inside).toBeLessThanOrEqual(1.6);
      expect(worst.edge).toBeLessThanOrEqual(11);
    }
  });
});

/** The cubic with a = -1/2, widened by the reduction, straight from its formula, in doubles, border repeated. */
function convolve(raster: Raster, widthPx: number, heightPx: number): Float64Array {
  const kernel = (d: number) => {
    const x = Math.abs(d);
    return x < 1 ? 1.5 * x ** 3 - 2.5 * x ** 2 + 1 : x < 2 ? -0.5 * x ** 3 + 2.5 * x ** 2 - 4 * x + 2 : 0;
  };
  const channels = channelsOf(raster);
  const axis = (source: number, output: number) =>
    Array.from({ length: output }, (_, i) => {
      const scale = Math.max(1, source / output);
      const place = ((i + 0.5) * source) / output - 0.5;
      const taps: [number, number][] = [];
      for (let from = Math.ceil(place - 2 * scale); from <= Math.floor(place + 2 * scale); from++)
        taps.push([Math.min(Math.max(from, 0), source - 1), kernel((from - place) / scale)]);
      const sum = taps.reduce((total, [, weight]) => total + weight, 0);
      return taps.map(([from, weight]) => [from, weight / sum] as const);
    });
  const across = axis(raster.widthPx, widthPx);
  const down = axis(raster.heightPx, heightPx);
  const exact = new Float64Array(widthPx * heightPx * channels);
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++)
      for (const [row, weightY] of down[y]!)
        for (const [column, weightX] of across[x]!)
          for (let channel = 0; channel < channels; channel++)
            exact[(y * widthPx + x) * channels + channel]! +=
              raster.data[(row * raster.widthPx + column) * channels + channel]! * weightX * weightY;
  return exact;
}
