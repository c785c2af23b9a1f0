import { describe, expect, it } from 'vitest';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import freeShadow from '../../src/mends/free-shadow.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { deepen } from '../checks/colour-jobs.ts';
import { findingsOf, outcomesOf, subjectOf } from '../checks/jobs.ts';
import { boxOf } from '../cut-out-art.ts';
import { GREEN, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';

const condition = await loadCondition('coated-reference');
const request = { widthMm: 60 };
const mend = (raster: Raster) =>
  freeShadow.apply(raster, {
    source: SRGB_PROFILE,
    condition,
    conversion: null,
    job: (placed = raster) => subjectOf(placed, request).job,
    extend: 'reflect',
  }).raster;

const SUBJECT = 50;
/** Alpha of a shadow under and right of a green disc, 0…1. */
const shadowAt = (x: number, y: number) =>
  0.6 * Math.max(0, 1 - Math.max(0, Math.hypot(x - 165, y - 165) - 40) / 60);
const isSubject = (x: number, y: number) => Math.hypot(x - 150, y - 150) < SUBJECT;

/** The disc and its shadow on a ground, flattened. */
function shaded(ground: readonly [number, number, number], noise = 0): Raster {
  const next = seededNumbers(7);
  return paintRaster(300, 300, (x, y): Rgba => {
    if (isSubject(x, y)) return GREEN;
    const left = 1 - shadowAt(x, y);
    const [r, g, b] = ground.map((sample) => Math.round(sample * left + noise * (next() - 0.5)));
    return [r!, g!, b!, 255];
  });
}

describe('free-shadow', () => {
  it.each([
    ['nearly white', shaded([248, 248, 248]), 248, 1],
    ['gray', shaded([200, 200, 200]), 200, 1],
    ['coloured', shaded([210, 180, 140]), 210, 1],
    ['with noise', shaded([248, 248, 248], 4), 248, 3],
    ['in 16 bits', deepen(shaded([248, 248, 248])), 248, 1],
  ])(
    'gives back the alpha that the shadow had, less the noise of a ground: %s',
    (_, raster, ground, tolerance) => {
      const before = raster.data.slice();
      const mended = mend(raster);
      const scale = mended.depth === 16 ? 257 : 1;
      const noise = 6 / ground;
      let worst = 0;
      for (let i = 0; i < 300 * 300; i += 1) {
        const [x, y] = [i % 300, Math.floor(i / 300)];
        const [r, g, b, alpha] = [...mended.data.subarray(4 * i, 4 * i + 4)].map((v) => v / scale);
        if (isSubject(x, y)) expect([r, g, b, alpha]).toEqual(GREEN);
        else {
          if (r! + g! + b! !== 0) expect([x, y, r, g, b]).toBe('black');
          worst = Math.max(
            worst,
            Math.abs(alpha! - 255 * Math.max(0, (shadowAt(x, y) - noise) / (1 - noise))),
          );
        }
      }
      expect(worst).toBeLessThanOrEqual(tolerance + 0.5);
      expect(raster.data).toEqual(before);
      expect(mend(mended) === mended).toBe(true);
      expect(findingsOf(outcomesOf(raster, request), 'near-white-box')).toHaveLength(1);
      expect(findingsOf(outcomesOf(mended, request), 'near-white-box')).toEqual([]);
    },
  );

  it('leaves a subject that begins with a step, even a gray one', () => {
    const raster = boxOf(248);
    const gray = paintRaster(
      300,
      300,
      (x, y): Rgba => (isSubject(x, y) ? [120, 120, 120, 255] : [248, 248, 248, 255]),
    );
    for (const one of [raster, gray]) {
      const { data } = mend(one);
      const middle = 4 * (150 * 300 + 150);
      expect([...data.subarray(middle, middle + 4)]).toEqual([...one.data.subarray(middle, middle + 4)]);
      expect(data[3]).toBe(0);
    }
  });

  it('leaves art without a box as it is', () => {
    for (const raster of [boxOf(255), paintRaster(50, 50, () => GREEN), paintRaster(1, 1, () => GREEN)])
      expect(mend(raster) === raster).toBe(true);
  });
});
