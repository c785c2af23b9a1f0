import { describe, expect, it } from 'vitest';
import recolourFringe from '../../src/mends/recolour-fringe.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { findingsOf, outcomesOf } from '../checks/jobs.ts';
import { BACKGROUNDS, cutOut, flower, glowing, ORANGE, outlined, patterned } from '../fringed-art.ts';
import { applyMend } from './apply-mend.ts';

const request = { widthMm: 44 };

const mend = (raster: Raster) => applyMend(recolourFringe, raster, request);

const fringesOf = (raster: Raster) => findingsOf(outcomesOf(raster, request), 'edge-fringe');
const alphaOf = ({ data }: Raster) => data.filter((_, i) => i % 4 === 3);
const isSame = (a: Raster['data'], b: Raster['data']) => a.every((sample, i) => sample === b[i]);

describe('recolour-fringe', () => {
  it.each(Object.keys(BACKGROUNDS))('gives a plain subject its own colour back, from %s', (name) => {
    for (const softPx of [1, 2, 3]) {
      const raster = cutOut({ background: BACKGROUNDS[name]!, left: 1, softPx });
      const before = raster.data.slice();
      const mended = mend(raster);
      expect(isSame(raster.data, before)).toBe(true);
      expect(fringesOf(raster)).toHaveLength(1);
      expect(fringesOf(mended)).toEqual([]);
      expect(isSame(alphaOf(mended), alphaOf(raster))).toBe(true);
      expect(mend(mended)).toBe(mended);
      // Farther off than what is left where less than a tenth was background, or where alpha is haze.
      let worst = 0;
      for (let at = 0; at < mended.data.length; at += 4)
        if (mended.data[at + 3]! >= 13)
          for (let k = 0; k < 3; k += 1) worst = Math.max(worst, Math.abs(mended.data[at + k]! - ORANGE[k]!));
      expect(worst).toBeLessThanOrEqual(27);
    }
  });

  it('comes near the true colours of a patterned subject, in 8 and in 16 bits', () => {
    const art = { softPx: 3, subject: patterned, shape: flower, background: [255, 255, 255] } as const;
    const [clean, raster] = [cutOut({ ...art, left: 0 }), cutOut({ ...art, left: 1 })];
    const mended = mend(raster);
    const distance = ({ data }: Raster) => {
      let sum = 0;
      for (let i = 0; i < data.length; i += 1)
        sum += Math.abs(data[i]! - clean.data[i]!) * data[i - (i % 4) + 3]!;
      return sum;
    };
    expect(distance(mended)).toBeLessThan(0.5 * distance(raster));
    const deep = mend({
      ...raster,
      depth: 16,
      data: Uint16Array.from(raster.data, (sample) => sample * 257),
    });
    // Both round to whole samples.
    expect(deep.data.every((sample, i) => Math.abs(sample - 257 * mended.data[i]!) <= 257)).toBe(true);
  });

  it('gives back the very raster where there is no fringe', () => {
    for (const raster of [
      cutOut({ background: [0, 0, 0], left: 0, softPx: 3 }),
      outlined(4, [255, 255, 255]),
      glowing(20, 0.7, [0, 0, 0], 5),
    ])
      expect(mend(raster)).toBe(raster);
  });
});
