import { expect, it } from 'vitest';
import { limitsWith } from '../../../src/formats/limits.ts';
import { layMarks } from '../../../src/sheet/marks/lay-marks.ts';
import { drawMarks } from '../../formats/draw-marks-alone.ts';
import { tilePage } from './pages.ts';

it('the rulers of a page drawn at 300 ppi are 100 mm of ink, end to end, within 0.1 px', async () => {
  const { drawing, shown } = layMarks(tilePage);
  const perMm = 300 / 25.4;
  const { widthMm, heightMm } = { widthMm: tilePage.pageMm.width, heightMm: tilePage.pageMm.height };
  const size = { widthPx: Math.round(widthMm * perMm), heightPx: Math.round(heightMm * perMm) };
  const { data } = await drawMarks(drawing, size, { x: 300, y: 300 }, limitsWith());
  const ink = (x: number, y: number) => data[(y * size.widthPx + x) * 4 + 3]! / 255;
  const rulers = shown.filter(({ mark }) => mark === 'ruler');
  expect(rulers.length).toBe(2);
  for (const { axis, boxMm } of rulers) {
    const [fromPx, toPx] = [boxMm.x, boxMm.y].map((mm) => Math.floor(mm * perMm) - 3) as [number, number];
    // The bar runs from 3 to 3.6 mm below the top of its ruler, or to the right of a standing ruler's left side.
    const across = Math.floor(((axis === 'x' ? boxMm.y : boxMm.x) + 3.3) * perMm);
    const start = axis === 'x' ? fromPx : toPx;
    let sum = 0;
    for (let along = start; along < start + 101 * perMm; along++)
      sum += axis === 'x' ? ink(along, across) : ink(across, along);
    expect(Math.abs(sum - 100 * perMm)).toBeLessThan(0.1);
  }
});
