import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MM_PER_INCH } from '../../src/geometry/length.ts';
import type { RectPx } from '../../src/geometry/rectangle.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { frameOf, rectToMm } from '../../src/job/art-frame.ts';
import type { Job, Turn } from '../../src/job/job.ts';
import { planPrint } from '../../src/prepare/plan.ts';
import type { PrintPlan, Step } from '../../src/prepare/step.ts';
import { blankOf, CLEAR, codeOf, cornersOf, jobOf, rectOf, WHITE } from './jobs.ts';

const tile = blankOf(rectOf(200, 200));
const planFor = (job: Job, background = WHITE) =>
  planPrint(job, { rimPx: cornersOf(job.contentBoxPx), background });
const names = (plan: PrintPlan) => plan.steps.map(({ step }) => step).join(' ');
function stepOf<Name extends Step['step']>(plan: PrintPlan, name: Name): Extract<Step, { step: Name }> {
  return plan.steps.find(({ step }) => step === name) as Extract<Step, { step: Name }>;
}

describe('planPrint', () => {
  it('plans 7 in wide art on an 8 in tile (200 mm): 2433 px square, art 2100 px wide in its middle', () => {
    const contentBoxPx = { x: 10, y: 20, width: 4200, height: 2100 };
    const job = jobOf(tile, contentBoxPx, { x: 11.1, y: 55.55, width: 177.8, height: 88.9 });
    const plan = planFor(job);
    expect(plan).toEqual({
      steps: [
        { step: 'crop', rectPx: contentBoxPx },
        { step: 'resize', widthPx: 2100, heightPx: 1050 },
        // The middle of 2433 px is 1216.5, so both edges lie on a half and round the same way.
        { step: 'pad', widthPx: 2433, heightPx: 2433, x: 167, y: 692 },
        { step: 'flatten', background: WHITE },
        { step: 'mirror' },
      ],
      widthPx: 2433,
      heightPx: 2433,
      widthMm: 206,
      heightMm: 206,
      ppi: 300,
      mirrored: true,
    });
  });

  it('neither mirrors a second surface nor fills a clear background', () => {
    const second = { ...tile, surface: 'second' as const };
    const job = jobOf(
      second,
      { x: 0, y: 0, width: 100, height: 100 },
      { x: 50, y: 50, width: 100, height: 100 },
    );
    const plan = planFor(job, CLEAR);
    expect(names(plan)).toBe('crop resize pad');
    expect(plan.mirrored).toBe(false);
  });

  it('scales in the axes of the artwork, then turns', () => {
    const placement = { x: 50, y: 50, width: 50.8, height: 101.6 };
    const job = jobOf(tile, { x: 0, y: 0, width: 2400, height: 1200 }, placement, { turn: 90 });
    const plan = planFor(job);
    expect(names(plan)).toBe('crop resize turn pad flatten mirror');
    expect(stepOf(plan, 'resize')).toMatchObject({ widthPx: 1200, heightPx: 600 });
    expect(stepOf(plan, 'turn').degrees).toBe(90);
  });

  it('copies pixels where the rounded size is the content box, also of art that overhangs', () => {
    const inside = jobOf(
      tile,
      { x: 0, y: 0, width: 1200, height: 600 },
      { x: 30, y: 30, width: 101.63, height: 50.82 },
    );
    expect(names(planFor(inside))).toBe('crop pad flatten mirror');
    const over = jobOf(
      tile,
      { x: 0, y: 0, width: 3000, height: 3000 },
      { x: -27, y: -27, width: 254.02, height: 254.02 },
    );
    expect(names(planFor(over))).toBe('crop pad cut flatten mirror');
  });

  describe('cut', () => {
    const disc: Shape = { kind: 'circle', box: { x: 0, y: 0, width: 100, height: 100 } };
    const square = { x: 0, y: 0, width: 1000, height: 1000 };
    const spread = (side: number) => ({ x: 50 - side / 2, y: 50 - side / 2, width: side, height: side });
    const hasCut = (edge: Shape, side: number) =>
      names(planFor(jobOf(blankOf(edge), square, spread(side)))).includes('cut');

    it('is planned from the first corner beyond the bleed line of the true shape, not before', () => {
      // The corner of a square in a circle of 106 mm: side 106 / sqrt 2.
      const limit = 106 / Math.SQRT2;
      expect(hasCut(disc, limit)).toBe(false);
      expect(hasCut(disc, limit - 0.001)).toBe(false);
      expect(hasCut(disc, limit + 0.001)).toBe(true);
    });

    it('is planned for the corners of a rectangle, whose bleed line is round', () => {
      // Corners reach bleed 3 mm from the corner when each side overhangs by 3 / sqrt 2.
      const limit = 100 + (2 * 3) / Math.SQRT2;
      expect(hasCut(rectOf(100, 100), limit)).toBe(false);
      expect(hasCut(rectOf(100, 100), limit + 0.001)).toBe(true);
    });

    it('says what the cut needs to know', () => {
      const plan = planFor(jobOf(blankOf(disc), square, spread(106)));
      expect(stepOf(plan, 'cut')).toEqual({ step: 'cut', edge: disc, bleedMm: 3, ppi: 300 });
    });
  });

  describe('limits', () => {
    it('refuses a canvas of too many pixels', () => {
      const sign = blankOf(rectOf(1500, 1500));
      const job = jobOf(sign, { x: 0, y: 0, width: 10, height: 10 }, { x: 0, y: 0, width: 100, height: 100 });
      expect(codeOf(() => planFor(job))).toBe('print-too-large');
      expect(codeOf(() => planFor({ ...job, ppi: 200 }))).toBe('nothing thrown');
    });

    it('refuses art so enlarged that a few of its pixels would not fit in memory', () => {
      const job = jobOf(
        tile,
        { x: 0, y: 0, width: 10, height: 10 },
        { x: -4900, y: -4900, width: 1e4, height: 1e4 },
      );
      expect(codeOf(() => planFor(job))).toBe('print-too-large');
    });
  });

  it('takes of art twenty times as large as the canvas little more than what shows', () => {
    const job = jobOf(
      tile,
      { x: 0, y: 0, width: 8000, height: 8000 },
      { x: -1960, y: -1960, width: 4120, height: 4120 },
    );
    const { rectPx } = stepOf(planFor(job), 'crop');
    // 206 of 4120 mm are 400 px, and at most 5 px more on each side.
    expect(rectPx.width).toBeGreaterThanOrEqual(400);
    expect(rectPx.width).toBeLessThanOrEqual(410);
  });

  it('keeps one pixel of art that lies beside the canvas, and places it there', () => {
    const job = jobOf(
      tile,
      { x: 5, y: 5, width: 100, height: 100 },
      { x: 300, y: 20, width: 50, height: 50 },
    );
    const plan = planFor(job);
    expect(stepOf(plan, 'crop').rectPx).toMatchObject({ x: 5, width: 1 });
    expect(stepOf(plan, 'pad').x).toBeGreaterThanOrEqual(plan.widthPx);
  });
});

describe('laws of a plan', () => {
  const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const px = (max: number) => fc.integer({ min: 1, max });
  const anyJob = fc
    .record({
      edge: fc.tuple(mm(10, 300), mm(10, 300)),
      offset: fc.tuple(mm(-20, 20), mm(-20, 20)),
      bleed: mm(0, 8),
      content: fc.record({ x: fc.nat(99), y: fc.nat(99), width: px(6000), height: px(6000) }),
      placement: fc.record({ x: mm(-400, 300), y: mm(-400, 300), width: mm(1, 900), height: mm(1, 900) }),
      turn: fc.constantFrom<Turn>(0, 90, 180, 270),
      ppi: fc.oneof(fc.constantFrom(72, 150, 300, 360, 600), mm(30, 700)),
    })
    .map(({ edge: [width, height], offset: [x, y], bleed, content, placement, turn, ppi }) => {
      const edge: Shape = { kind: 'rect', box: { x, y, width, height } };
      return jobOf(blankOf(edge, { bleed: { value: bleed, from: 'test' } }), content, placement, {
        turn,
        ppi,
      });
    });

  /** Where the kept pixels lie on the canvas after all steps before the mirror. */
  function landing(plan: PrintPlan): { rectPx: RectPx; canvas: RectPx } {
    const { rectPx } = stepOf(plan, 'crop');
    const resize = stepOf(plan, 'resize') ?? { widthPx: rectPx.width, heightPx: rectPx.height };
    const turn = stepOf(plan, 'turn')?.degrees ?? 0;
    const [width, height] =
      turn === 90 || turn === 270 ? [resize.heightPx, resize.widthPx] : [resize.widthPx, resize.heightPx];
    const { x, y } = stepOf(plan, 'pad');
    return { rectPx, canvas: { x, y, width, height } };
  }

  it('lays every edge within half a pixel of its place, and leaves out nothing that shows', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        let plan: PrintPlan;
        try {
          plan = planFor(job);
        } catch {
          return; // too large: refused, not planned
        }
        const { rectPx, canvas } = landing(plan);
        const { box } = job.blank.edge;
        const placeOf = (value: number, middle: number, canvasPx: number) =>
          canvasPx / 2 + ((value - middle) / MM_PER_INCH) * job.ppi;
        const part = rectToMm(frameOf(job), rectPx);
        for (const [axis, size, middle, canvasPx] of [
          ['x', 'width', box.x + box.width / 2, plan.widthPx],
          ['y', 'height', box.y + box.height / 2, plan.heightPx],
        ] as const) {
          const from = placeOf(part[axis], middle, canvasPx);
          const to = placeOf(part[axis] + part[size], middle, canvasPx);
          // Half a pixel, the nudge of 1e-6, and what doubles lose over a few thousand pixels.
          expect(Math.abs(canvas[axis] - from)).toBeLessThanOrEqual(0.5 + 2e-6);
          if (to - from >= 1)
            expect(Math.abs(canvas[axis] + canvas[size] - to)).toBeLessThanOrEqual(0.5 + 2e-6);
          // Art that truly overhangs the canvas must still cover it after the crop.
          const { placementMm } = job;
          if (placeOf(placementMm[axis], middle, canvasPx) < -1) expect(canvas[axis]).toBeLessThanOrEqual(0);
          if (placeOf(placementMm[axis] + placementMm[size], middle, canvasPx) > canvasPx + 1)
            expect(canvas[axis] + canvas[size]).toBeGreaterThanOrEqual(canvasPx);
        }
      }),
      { seed: 21, numRuns: 2000 },
    );
  });

  it('is the same each time, and its canvas is round(mm / 25.4 * ppi)', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        let plan: PrintPlan;
        try {
          plan = planFor(job);
        } catch {
          return;
        }
        expect(planFor(job)).toEqual(plan);
        const { box } = job.blank.edge;
        const bleed = 2 * job.blank.bleed.value;
        expect(plan.widthPx).toBe(Math.round(((box.width + bleed) / 25.4) * job.ppi));
        expect(plan.heightPx).toBe(Math.round(((box.height + bleed) / 25.4) * job.ppi));
      }),
      { seed: 22, numRuns: 500 },
    );
  });
});
