import { beforeAll, describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { paintLeaves } from '../leafy-art.ts';
import { scaled } from '../photo-like-art.ts';
import { CLEAR, paintRaster, type Rgba } from '../pictures.ts';
import { deepen } from './colour-jobs.ts';
import { DEGENERATE_ART } from './degenerate-art.ts';
import { findingsOf, outcomesOf } from './jobs.ts';

const FACTOR = 3;
let art: Raster;
beforeAll(async () => {
  art = await scaled(paintLeaves(), FACTOR, 'cubic');
});
const outcomeOf = (raster: Raster, widthMm = 60) =>
  outcomesOf(raster, { widthMm }).find(({ check }) => check === 'true-detail')!;
/** At this true ppi the 320 px of detail are so wide. */
const at = (ppi: number) => (320 / ppi) * 25.4;

describe('true-detail', () => {
  // Limits of a blank that is given as a size: those of ceramic tile, 300/220/150. Estimates are off by a hundredth at most.
  it.each([
    [310, null, null],
    [290, 'below-good', 'advice'],
    [225, 'below-good', 'advice'],
    [215, 'below-acceptable', 'warning'],
    [153, 'below-acceptable', 'warning'],
    [147, 'below-stop', 'error'],
  ])('%d ppi of real detail: %s', (ppi, code, severity) => {
    const outcome = outcomeOf(art, at(ppi));
    if (code === null) {
      expect(outcome).toMatchObject({ status: 'passed', facts: { enlargedBy: expect.closeTo(FACTOR, 1) } });
      return;
    }
    const [found, ...more] = findingsOf([outcome], 'true-detail');
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code, severity, facts: { by: 'interpolation', bothDirections: true } });
    expect(Math.abs(found!.actual!.value / ppi - 1)).toBeLessThan(0.02);
    const share = found!.actual!.value / Number(found!.facts.aimPpi);
    expect(found!.facts.widthAtAimMm).toBeCloseTo(at(ppi) * share, 9);
  });

  it('leaves art that was not enlarged to the check of effective resolution', () => {
    const outcomes = outcomesOf(paintLeaves(), { widthMm: 60 });
    expect(outcomes.find(({ check }) => check === 'true-detail')).toMatchObject({
      status: 'passed',
      facts: { enlargedBy: 1 },
    });
    expect(findingsOf(outcomes, 'effective-resolution')).toHaveLength(1);
  });

  it('lowers to advice what one direction alone says', () => {
    // Stripes of single columns, repeated twice; nothing changes downwards.
    const stripes = paintRaster(600, 400, (x): Rgba => {
      const code = 40 + ((Math.floor(x / 2) * 67) % 170);
      return [code, code, code, 255];
    });
    const [found] = findingsOf([outcomeOf(stripes, at(150))], 'true-detail');
    expect(found).toMatchObject({
      severity: 'advice',
      facts: { bothDirections: false, by: 'repeated-pixels' },
    });
  });

  it('lowers to advice what a small factor says, not a larger one', async () => {
    const severityOf = (raster: Raster) =>
      findingsOf([outcomeOf(raster, (raster.widthPx / 300) * 25.4 * 2.5)], 'true-detail').map(
        ({ severity }) => severity,
      );
    // 120 ppi of pixels, and less of detail: below the stop limit of 150.
    expect(severityOf(await scaled(paintLeaves(), 1.4, 'cubic'))).toEqual(['advice']);
    expect(severityOf(await scaled(paintLeaves(), 1.6, 'cubic'))).toEqual(['error']);
  });

  it('sees 16 bits alike', () => {
    const [eight] = findingsOf([outcomeOf(art, at(147))], 'true-detail');
    const [sixteen] = findingsOf([outcomeOf(deepen(art), at(147))], 'true-detail');
    expect(sixteen!.actual!.value).toBeCloseTo(eight!.actual!.value, 3);
  });

  it('is skipped where nothing can be told: soft art, a drawing, inks, nothing', () => {
    const plain = paintRaster(200, 200, () => [90, 90, 90, 255]);
    expect(outcomeOf(plain).status).toBe('skipped');
    expect(outcomeOf(paintRaster(9, 9, () => CLEAR)).status).toBe('skipped');
    const vector = { textElements: 0, outsideReferences: [], pictures: [], unplacedPictures: 0 };
    const drawn = outcomesOf(art, { widthMm: at(100) }, { format: 'svg', vector });
    expect(drawn.find(({ check }) => check === 'true-detail')!.status).toBe('skipped');
    const data = new Uint8Array(4 * 100 * 100);
    const inks: Raster = { widthPx: 100, heightPx: 100, model: 'cmyk', hasAlpha: false, depth: 8, data };
    expect(outcomeOf(inks).status).toBe('skipped');
  });

  it.each(DEGENERATE_ART)('finds nothing in %s', (_, raster) => {
    expect(outcomeOf(raster, raster.widthPx === 1 ? 1 : 50).status).not.toBe('found');
  });
});
