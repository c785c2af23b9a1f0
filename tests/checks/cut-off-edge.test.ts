import { describe, expect, it } from 'vitest';
import { type AlphaAt, cutDisc, cutGlow, cutWedge, paintAlpha, widthMmOf } from '../cut-off-art.ts';
import { CLEAR, GREEN, paintRaster } from '../pictures.ts';
import { deepen } from './colour-jobs.ts';
import { findingsOf, outcomesOf, PLATE } from './jobs.ts';

const judge = (alphaAt: AlphaAt, turns = 0, request = {}) => {
  const raster = paintAlpha(alphaAt, turns);
  const outcomes = outcomesOf(raster, { widthMm: widthMmOf(raster), blank: PLATE, ...request });
  return findingsOf(outcomes, 'cut-off-edge');
};
const codesOf = (alphaAt: AlphaAt, turns = 0, request = {}) =>
  judge(alphaAt, turns, request).map(({ code, severity }) => `${code}:${severity}`);

describe('cut-off-edge: shapes', () => {
  it.each([
    // A disc that only touches the canvas, and one that lacks less than half a millimetre, look whole.
    [0, []],
    [0.3, []],
    [0.7, ['cut-shape:advice']],
    [10, ['cut-shape:advice']],
  ])('a disc of radius 24 mm that lacks %d mm', (missing, codes) => {
    for (const turns of [0, 1, 2, 3]) expect(codesOf(cutDisc(missing), turns)).toEqual(codes);
  });

  it.each([
    [-30, ['cut-shape:advice']],
    [0, []],
    [5, []],
    [15, ['cut-shape:advice']],
  ])('a wedge whose sides stand %d degrees off the right angle', (degrees, codes) => {
    expect(codesOf(cutWedge(degrees))).toEqual(codes);
  });

  it('says how long the end is, and where', () => {
    const [finding] = judge(cutDisc(10));
    const chordMm = 2 * Math.sqrt(24 ** 2 - 14 ** 2);
    expect(Math.abs(Number(finding!.facts.lengthMm) - chordMm)).toBeLessThan(0.4);
    // 48 mm wide and 38 mm high, centred on a plate of 100 mm.
    const { x, y, width, height } = finding!.place!.mm;
    expect(x + width / 2).toBeCloseTo(50, 0);
    expect(y + height).toBeCloseTo(50 + 19, 0);
    expect(finding!.facts.sidesOfCanvas).toBe('bottom');
  });

  it('does not take trimmed art for cut, whatever its outline', () => {
    const diamond: AlphaAt = (x, y) => 170 - Math.abs(x - 150) - Math.abs(y - 150);
    expect(codesOf(diamond)).toEqual([]);
  });

  it('leaves what nobody sees: an end beyond the edge of the blank', () => {
    expect(codesOf(cutDisc(10), 0, { widthMm: 150 })).toEqual([]);
  });
});

describe('cut-off-edge: glows', () => {
  it.each([
    [0.03, []],
    [0.3, ['cut-glow:advice']],
    [0.7, ['cut-glow:advice']],
  ])('a glow that has %d of its alpha left where the canvas ends', (atEnd, codes) => {
    for (const turns of [0, 1, 2, 3]) expect(codesOf(cutGlow(atEnd), turns)).toEqual(codes);
  });

  it('takes no even translucency for a glow, and no end of 1 pixel', () => {
    expect(codesOf((x, y) => (x > 50 && x < 250 && y > 100 ? 0.5 : 0))).toEqual([]);
    expect(codesOf((x, y) => (x > 50 && x < 250 && y > 100 ? (y > 299 ? 0.5 : 1) : 0))).toEqual([]);
  });

  it('finds it in 16 bits too', () => {
    const raster = deepen(paintAlpha(cutGlow(0.3)));
    const outcomes = outcomesOf(raster, { widthMm: 50, blank: PLATE });
    expect(findingsOf(outcomes, 'cut-off-edge').map(({ code }) => code)).toEqual(['cut-glow']);
  });
});

describe('cut-off-edge: degenerate art', () => {
  it.each([
    ['one pixel', paintRaster(1, 1, () => GREEN)],
    ['one row', paintRaster(300, 1, (x) => (x < 150 ? GREEN : CLEAR))],
    ['a checkerboard', paintRaster(60, 60, (x, y) => ((x + y) % 2 === 0 ? GREEN : CLEAR))],
    ['one colour', paintRaster(300, 300, () => GREEN)],
  ])('%s ends nowhere', (_, raster) => {
    expect(findingsOf(outcomesOf(raster, { widthMm: 60, blank: PLATE }), 'cut-off-edge')).toEqual([]);
  });
});
