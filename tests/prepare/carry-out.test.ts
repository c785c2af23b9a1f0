import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { resample } from '../../src/formats/resample.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';
import { planPrint } from '../../src/prepare/plan.ts';
import type { PrintPlan, Step } from '../../src/prepare/step.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { blockRaster, GREEN, paintRaster, type Rgba } from '../pictures.ts';
import { anyRaster, pixelAt, rasterOf } from '../raster/any-raster.ts';
import { carryOut } from './carry-out-all.ts';
import { blankOf, CLEAR, cornersOf, jobOf, rectOf, WHITE } from './jobs.ts';

const planOf = (steps: readonly Step[]): PrintPlan => ({
  steps,
  widthPx: 0,
  heightPx: 0,
  widthMm: 0,
  heightMm: 0,
  ppi: 300,
  mirrored: false,
});
const carry = (raster: Raster, steps: readonly Step[]) => carryOut(raster, planOf(steps), { resample });

describe('carryOut', () => {
  it('prints a block exactly where the plan lays it, mirrored, on white', async () => {
    // 254 mm square at 25.4 ppi are 254 px, and the bleed of 3 mm three more on each side.
    const content = { x: 7, y: 9, width: 80, height: 40 };
    const job = jobOf(
      blankOf(rectOf(254, 254)),
      content,
      { x: 10, y: 20, width: 40, height: 20 },
      { ppi: 25.4 },
    );
    const plan = planPrint(job, { rimPx: cornersOf(content), background: WHITE });
    const printed = await carryOut(blockRaster([100, 60], content), plan, { resample });
    expect(printed).toMatchObject({ widthPx: 260, heightPx: 260, model: 'rgb', hasAlpha: false, depth: 8 });
    // Seen from the front it begins at 13, 23 and ends at 53, 43; mirrored, x runs from 260 - 53 to 260 - 13.
    let wrong = 0;
    for (let y = 0; y < 260; y++)
      for (let x = 0; x < 260; x++) {
        const within = x >= 207 && x < 247 && y >= 23 && y < 43;
        const expected = within ? GREEN : [255, 255, 255];
        if (pixelAt(printed, x, y).some((sample, channel) => sample !== expected[channel])) wrong++;
      }
    expect(wrong).toBe(0);
  });

  it('turns clockwise as seen from the front, and mirrors after that', async () => {
    const corners: Rgba[] = [
      [255, 0, 0, 255],
      [0, 255, 0, 255],
      [0, 0, 255, 255],
      [255, 255, 0, 255],
    ];
    const raster = paintRaster(20, 10, (x, y) => corners[(y < 5 ? 0 : 2) + (x < 10 ? 0 : 1)]!);
    const content = { x: 0, y: 0, width: 20, height: 10 };
    const second = blankOf(rectOf(10, 20), { surface: 'second', bleed: { value: 0, from: 'test' } });
    const job = jobOf(second, content, { x: 0, y: 0, width: 10, height: 20 }, { turn: 90, ppi: 25.4 });
    const seen = async (surface: 'first' | 'second') => {
      const plan = planPrint(
        { ...job, blank: { ...second, surface } },
        { rimPx: cornersOf(content), background: WHITE },
      );
      const printed = await carryOut(raster, plan, { resample });
      return [
        pixelAt(printed, 0, 0),
        pixelAt(printed, 9, 0),
        pixelAt(printed, 0, 19),
        pixelAt(printed, 9, 19),
      ];
    };
    const [red, green, blue, yellow] = corners.map((colour) => colour.slice(0, 3));
    // A quarter turn brings the lower left corner to the upper left.
    expect(await seen('second')).toEqual([blue, red, yellow, green]);
    expect(await seen('first')).toEqual([red, blue, green, yellow]);
  });

  it.each<Shape>([
    { kind: 'circle', box: { x: 2, y: 1, width: 40, height: 40 } },
    { kind: 'rounded-rect', box: { x: 0, y: 0, width: 50, height: 30 }, cornerRadiusMm: 4 },
    { kind: 'ellipse', box: { x: 0, y: 0, width: 50, height: 24 } },
    {
      kind: 'polygon',
      box: { x: 0, y: 0, width: 40, height: 40 },
      pointsMm: [
        [20, 0],
        [40, 40],
        [20, 28],
        [0, 40],
      ],
    },
  ])('prints nothing beyond the bleed line of a $kind, and all within', async (edge) => {
    const { box } = edge;
    const content = { x: 0, y: 0, width: 100, height: 100 };
    const job = jobOf(
      blankOf(edge),
      content,
      { x: box.x - 10, y: box.y - 10, width: box.width + 20, height: box.height + 20 },
      { ppi: 100 },
    );
    const plan = planPrint(job, { rimPx: cornersOf(content), background: WHITE });
    const printed = await carryOut(
      paintRaster(100, 100, () => GREEN),
      plan,
      { resample },
    );
    let wrong = 0;
    for (let y = 0; y < plan.heightPx; y++)
      for (let x = 0; x < plan.widthPx; x++) {
        const seen = plan.widthPx - 1 - x; // the canvas is mirrored
        const xMm = box.x + box.width / 2 + ((seen + 0.5 - plan.widthPx / 2) / 100) * 25.4;
        const yMm = box.y + box.height / 2 + ((y + 0.5 - plan.heightPx / 2) / 100) * 25.4;
        const distance = distanceInside(edge, xMm, yMm) + 3;
        // Doubles cannot tell on which side of the line a middle lies that is as good as on it.
        if (Math.abs(distance) > 1e-9 && (pixelAt(printed, x, y)[0] === GREEN[0]) !== distance > 0) wrong++;
      }
    expect(wrong).toBe(0);
  });

  it('hands the artwork itself and the rectangle to the resampling, without a copy between', async () => {
    const raster = createRaster({ widthPx: 50, heightPx: 40, model: 'rgb', hasAlpha: true, depth: 8 });
    const port = vi.fn(resample);
    const rectPx = { x: 5, y: 6, width: 30, height: 20 };
    const steps: Step[] = [
      { step: 'crop', rectPx },
      { step: 'resize', widthPx: 15, heightPx: 10 },
    ];
    await carryOut(raster, planOf(steps), { resample: port });
    expect(port).toHaveBeenCalledTimes(1);
    expect(port.mock.calls[0]![0]).toBe(raster);
    expect(port.mock.calls[0]![1]).toEqual({ rectPx, widthPx: 15, heightPx: 10 });
  });

  it('gives 8-bit rgb of whatever comes in, clear where there is no background', async () => {
    const shape = { widthPx: 1, heightPx: 1, model: 'gray', hasAlpha: true, depth: 16 } as const;
    const pad: Step = { step: 'pad', widthPx: 2, heightPx: 1, x: 0, y: 0 };
    // 0x8000 of 65535 at alpha 0x4000 of 65535: 128 * 255 / 65535 rounds to 128, 64 of 255.
    const gray = rasterOf(shape, [0x8000, 0x4000]);
    const clear = await carry(gray, [pad]);
    expect(clear).toMatchObject({ model: 'rgb', hasAlpha: true, depth: 8 });
    expect([...clear.data]).toEqual([128, 128, 128, 64, 0, 0, 0, 0]);
    const white = await carry(gray, [pad, { step: 'flatten', background: WHITE }]);
    expect(white).toMatchObject({ model: 'rgb', hasAlpha: false, depth: 8 });
    // 255 - (255 - 127.502) * 0.25 = 223.12
    expect([...white.data]).toEqual([223, 223, 223, 255, 255, 255]);
  });

  it('leaves the artwork as it was', async () => {
    const steps: Step[] = [
      { step: 'crop', rectPx: { x: 0, y: 0, width: 1, height: 1 } },
      { step: 'pad', widthPx: 3, heightPx: 2, x: 1, y: 1 },
      { step: 'cut', edge: rectOf(1, 1), bleedMm: 0, ppi: 25.4 },
      { step: 'flatten', background: WHITE },
      { step: 'mirror' },
    ];
    await fc.assert(
      fc.asyncProperty(anyRaster(4), fc.nat(steps.length - 1), async (raster, skipped) => {
        const before = raster.data.slice();
        await carry(
          raster,
          steps.slice(skipped === 0 ? 0 : 1).filter((_, index) => index !== skipped),
        );
        expect(raster.data).toEqual(before);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  it('needs no order: without a canvas of its own, each step still copies', async () => {
    const raster = paintRaster(3, 1, (x) => [x, x, x, 255]);
    const before = raster.data.slice();
    expect([...(await carry(raster, [{ step: 'mirror' }])).data.filter((_, i) => i % 4 === 0)]).toEqual([
      2, 1, 0,
    ]);
    expect((await carry(raster, [{ step: 'flatten', background: WHITE }])).hasAlpha).toBe(false);
    await carry(raster, [{ step: 'cut', edge: rectOf(1, 1), bleedMm: 0, ppi: 25.4 }]);
    expect(raster.data).toEqual(before);
  });

  it('stops between steps when told to', async () => {
    const stop = new AbortController();
    const port = vi.fn(async (raster: Raster) => {
      stop.abort(new Error('stopped'));
      return raster;
    });
    const steps: Step[] = [
      { step: 'resize', widthPx: 2, heightPx: 2 },
      { step: 'resize', widthPx: 3, heightPx: 3 },
    ];
    const raster = paintRaster(1, 1, () => GREEN);
    const run = carryOut(raster, planOf(steps), { resample: port, signal: stop.signal });
    await expect(run).rejects.toThrow('stopped');
    expect(port).toHaveBeenCalledTimes(1);
  });
});

describe('art larger than the canvas', () => {
  it('prints within a few levels what it would print uncropped', async () => {
    // Smooth art, so that the only differences are the rounding of its edges by up to half a pixel.
    const art = paintRaster(900, 700, (x, y) => [
      128 + 100 * Math.sin(x / 60),
      128 + 100 * Math.cos(y / 50),
      90,
      255,
    ]);
    const content = { x: 0, y: 0, width: 900, height: 700 };
    const job = jobOf(
      blankOf(rectOf(40, 40)),
      content,
      { x: -60, y: -43, width: 180, height: 140 },
      { ppi: 100 },
    );
    const plan = planPrint(job, { rimPx: [], background: CLEAR });
    const printed = await carryOut(art, plan, { resample });
    const wide = await resample(art, { rectPx: content, widthPx: 709, heightPx: 551 });
    const left = Math.round(plan.widthPx / 2 + ((-60 - 20) / 25.4) * 100);
    const top = Math.round(plan.heightPx / 2 + ((-43 - 20) / 25.4) * 100);
    let worst = 0;
    for (let y = 0; y < plan.heightPx; y++)
      for (let x = 0; x < plan.widthPx; x++) {
        const seen = plan.widthPx - 1 - x;
        const whole = pixelAt(wide, seen - left, y - top);
        pixelAt(printed, x, y).forEach((sample, channel) => {
          worst = Math.max(worst, Math.abs(sample - whole[channel]!));
        });
      }
    // Steepest slope 100 / 50 levels a source pixel, 1.27 source pixels an output pixel, off by at most half and half.
    expect(worst).toBeLessThanOrEqual(Math.ceil((100 / 50) * 1.27) + 1);
    expect(worst).toBeGreaterThan(0);
  });
});
