import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { deepen, onlyFinding } from './colour-jobs.ts';
import { outcomesOf, subjectOf } from './jobs.ts';

interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly colour?: Rgba;
}

/** Blocks on a clear canvas of 100 x 100 mm at 10 px a millimetre; the design fills 20…80 mm. */
const DESIGN: Block = { x: 200, y: 200, width: 600, height: 600 };
function paint(...blocks: readonly Block[]): Raster {
  const raster = paintRaster(1000, 1000, () => CLEAR);
  for (const { x, y, width, height, colour = GREEN } of [DESIGN, ...blocks])
    for (let row = y; row < y + height; row += 1)
      for (let column = x; column < x + width; column += 1)
        raster.data.set(colour, (row * 1000 + column) * 4);
  return raster;
}

/** Printed at 0.1 mm a pixel, whatever the box of the art is. */
function judge(raster: Raster) {
  const { width } = subjectOf(raster).extents.contentBoxPx!;
  return outcomesOf(raster, { widthMm: width / 10 }).find(({ check }) => check === 'stray-pixels')!;
}
const codeOf = (raster: Raster) => {
  const outcome = judge(raster);
  return outcome.status === 'found' ? onlyFinding(outcome).code : outcome.status;
};

describe('stray-pixels', () => {
  it('names each speck with place and size, and the box without them', () => {
    const finding = onlyFinding(
      judge(paint({ x: 900, y: 500, width: 5, height: 3 }, { x: 500, y: 100, width: 1, height: 1 })),
    );
    expect([finding.code, finding.severity]).toEqual(['enlarges-box', 'advice']);
    expect(finding.place!.px).toEqual({ x: 900, y: 500, width: 5, height: 3 });
    const { specks, ...facts } = finding.facts;
    expect(facts.count).toBe(2);
    expect(facts.largestMm).toBeCloseTo(0.5, 9);
    expect(facts.boxWidthMm).toBeCloseTo(70.5, 9);
    expect(facts.boxHeightMm).toBeCloseTo(70, 9);
    expect([facts.keptWidthMm, facts.keptHeightMm]).toEqual([expect.closeTo(60, 9), expect.closeTo(60, 9)]);
    expect(specks).toHaveLength(2);
  });

  it.each([
    ['a speck of 1.5 mm', 15, 'enlarges-box'],
    ['a part of 1.6 mm', 16, 'passed'],
  ])('%s', (_, width, code) => {
    expect(codeOf(paint({ x: 900, y: 500, width, height: 3 }))).toBe(code);
  });

  it.each([
    ['1.9 mm away', 819, 'passed'],
    ['2 mm away', 820, 'enlarges-box'],
    ['2.1 mm away', 821, 'enlarges-box'],
  ])('%s', (_, x, code) => {
    expect(codeOf(paint({ x, y: 500, width: 3, height: 3 }))).toBe(code);
  });

  it('measures diagonals as the eye does: 1.5 mm each way are 2.1 mm, 1.4 mm are 1.98', () => {
    expect(codeOf(paint({ x: 815, y: 815, width: 2, height: 2 }))).toBe('enlarges-box');
    expect(codeOf(paint({ x: 814, y: 814, width: 2, height: 2 }))).toBe('passed');
  });

  it('a speck in a hole of the design enlarges nothing: advice', () => {
    const raster = paint(
      { x: 400, y: 400, width: 100, height: 100, colour: CLEAR },
      { x: 448, y: 448, width: 4, height: 4 },
    );
    const finding = onlyFinding(judge(raster));
    expect([finding.code, finding.severity]).toEqual(['specks', 'advice']);
  });

  it('four solid ones of 0.4 mm are a pattern, three are not; faint ones never are', () => {
    const row = (count: number, colour: Rgba = GREEN) =>
      Array.from({ length: count }, (_, i) => ({ x: 300 + 50 * i, y: 900, width: 4, height: 4, colour }));
    expect(codeOf(paint(...row(3)))).toBe('enlarges-box');
    expect(codeOf(paint(...row(4)))).toBe('passed');
    expect(codeOf(paint(...row(4, [40, 120, 60, 90])))).toBe('enlarges-box');
  });

  it('a picture of dots alone strays from nothing, nor does one pixel or an opaque picture', () => {
    expect(codeOf(paintRaster(600, 600, (x, y) => (x % 30 < 5 && y % 30 < 5 ? GREEN : CLEAR)))).toBe(
      'passed',
    );
    expect(codeOf(paintRaster(1, 1, () => GREEN))).toBe('passed');
    expect(codeOf(paintRaster(1, 300, () => GREEN))).toBe('passed');
    expect(codeOf(paintRaster(300, 300, (x, y) => ((x + y) % 2 === 0 ? GREEN : CLEAR)))).toBe('passed');
  });

  it('is skipped where nothing is visible', () => {
    expect(outcomesOf(paintRaster(9, 9, () => CLEAR)).find(({ check }) => check === 'stray-pixels')).toEqual(
      expect.objectContaining({ status: 'skipped' }),
    );
  });

  it('sees alpha of 1 in 65535, as the box does', () => {
    const raster = deepen(paint());
    raster.data[(900 * 1000 + 500) * 4 + 3] = 1;
    expect(codeOf(raster)).toBe('enlarges-box');
  });

  it('counts 60,000 specks and names twenty', () => {
    const random = seededNumbers(7);
    const raster = paint();
    const places = new Set<number>();
    while (places.size < 60_000) {
      const [x, y] = [Math.floor(random() * 500) * 2, Math.floor(random() * 500) * 2];
      if (x < 178 || x > 822 || y < 178 || y > 822) places.add(y * 1000 + x);
    }
    for (const at of places) raster.data.set([9, 9, 9, 3], at * 4);
    const { facts } = onlyFinding(judge(raster));
    expect(facts.count).toBe(60_000);
    expect(facts.specks).toHaveLength(20);
  }, 20_000);
});
