import { describe, expect, it } from 'vitest';
import { layOverlay } from '../overlaid-art.ts';
import { paintPhoto } from '../photo-like-art.ts';
import { paintRaster } from '../pictures.ts';
import { findingsOf, outcomesOf } from './jobs.ts';

const DRAWING = {
  format: 'svg',
  vector: { textElements: 0, outsideReferences: [], pictures: [], unplacedPictures: 0 },
} as const;
const bar = (heightPx: number, clearPx = 0) =>
  paintRaster(30, heightPx + clearPx, (_, y) => [40, 120, 60, y < heightPx ? 255 : 0]);

describe('marked-preview', () => {
  it.each([
    [999, ['preview-sized:advice']],
    [1000, []],
    [1001, []],
  ])('%d px on the longer side', (heightPx, codes) => {
    const found = findingsOf(outcomesOf(bar(heightPx)), 'marked-preview');
    expect(found.map(({ code, severity }) => `${code}:${severity}`)).toEqual(codes);
  });

  it('counts the content box, not clear margins, and says where and how large it prints', () => {
    const [found] = findingsOf(outcomesOf(bar(800, 400), { heightMm: 80 }), 'marked-preview');
    expect(found).toMatchObject({
      actual: { value: 800, unit: 'px' },
      expected: { min: 1000, unit: 'px', from: 'practice:preview-side' },
      facts: { heightMm: expect.closeTo(80, 9), widthMm: expect.closeTo(3, 9) },
    });
    expect(found!.place!.px).toEqual({ x: 0, y: 0, width: 30, height: 800 });
  });

  it('asks nothing of a drawing, and nothing where nothing is visible', () => {
    for (const outcomes of [
      outcomesOf(bar(100), {}, DRAWING),
      outcomesOf(paintRaster(5, 5, () => [9, 9, 9, 0])),
    ])
      expect(outcomes.find(({ check }) => check === 'marked-preview')!.status).toBe('skipped');
  });

  it.each([0, 20, -45])(
    'asks about marks that repeat, turned by %d degrees, and says how far apart they are',
    (turnDeg) => {
      const marked = layOverlay(paintPhoto('clouds'), { stepPx: 150, turnDeg, gray: 255, opacity: 0.3 });
      // 10 px/mm: rows lie 0.6 x 15 mm apart.
      const found = findingsOf(outcomesOf(marked, { widthMm: 84 }), 'marked-preview');
      expect(found.map(({ code, severity }) => `${code}:${severity}`)).toEqual([
        'preview-sized:advice',
        'repeated-overlay:advice',
      ]);
      const { actual, facts } = found[1]!;
      expect(actual!.unit).toBe('mm');
      expect(Math.abs(actual!.value - 9)).toBeLessThan(0.15);
      // 840 x 600 px over 150 x 90, less what is cut by the rims.
      expect(facts.times).toBeGreaterThan(22);
      expect(facts.times).toBeLessThanOrEqual(46);
    },
  );

  it('asks nothing about the same art without marks, nor where they hide what is under them', () => {
    const photo = paintPhoto('clouds');
    const hidden = layOverlay(photo, { stepPx: 150, turnDeg: 0, gray: 255, opacity: 1 });
    for (const art of [photo, hidden])
      expect(findingsOf(outcomesOf(art, { widthMm: 84 }), 'marked-preview').map(({ code }) => code)).toEqual([
        'preview-sized',
      ]);
  });
});
