import { describe, expect, it } from 'vitest';
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
});
