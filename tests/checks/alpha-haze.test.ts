import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { glowOf, paintHazy, veilOf } from '../hazy-art.ts';
import { CLEAR, GREEN, paintRaster } from '../pictures.ts';
import { deepen, onlyFinding } from './colour-jobs.ts';
import { blankOf, findingsOf, outcomesOf, PLATE } from './jobs.ts';

const judge = (raster: Raster, request = {}) =>
  outcomesOf(raster, { widthMm: 60, ...request }).find(({ check }) => check === 'alpha-haze')!;
const statusOf = (raster: Raster, request = {}) => judge(raster, request).status;

describe('alpha-haze', () => {
  it.each([
    [1, 'passed'],
    [2, 'passed'],
    [3, 'found'],
    [8, 'found'],
    [12, 'found'],
    [13, 'passed'],
    [60, 'passed'],
  ])('a black veil of alpha %d on white: one L* is the least, 12 the most', (alpha, status) => {
    expect(statusOf(veilOf(alpha, 20))).toBe(status);
  });

  it.each([
    [4.8, 'passed'],
    [5, 'found'],
    [5.2, 'found'],
  ])('a veil of %d mm square: 25 mm2 are the least', (side, status) => {
    expect(statusOf(veilOf(8, side))).toBe(status);
  });

  it('says how dark, how large and where, as another library computes it', () => {
    const finding = onlyFinding(judge(veilOf(8, 20)));
    const lab = converter('lab')({ mode: 'rgb', r: 247 / 255, g: 247 / 255, b: 247 / 255 });
    expect(finding.facts.lightnessStep).toBeCloseTo(100 - lab.l, 2);
    expect(finding.facts.areaMm2).toBeCloseTo(400, 6);
    expect([finding.code, finding.severity]).toEqual(['veil', 'advice']);
    const { x, y, width, height } = finding.place!.mm;
    // The plate is 100 mm wide, the art stands in its middle.
    for (const [is, should] of [
      [x, 22],
      [y, 58],
      [width, 20],
      [height, 20],
    ] as const)
      expect(Math.abs(is - should)).toBeLessThanOrEqual(1);
  });

  it('finds it through grain, all over the canvas, right up to the art, and beside a glow', () => {
    expect(statusOf(veilOf(8, 20, 3))).toBe('found');
    expect(statusOf(paintHazy(() => 6))).toBe('found');
    expect(statusOf(paintHazy((far) => Math.max(6, 200 * (1 - far / 6))))).toBe('found');
    expect(statusOf(paintHazy((far, x) => (x < 20 ? 5 : 120 * (1 - far / 15))))).toBe('found');
  });

  it.each([
    ['linear glow to 12 mm', glowOf(160, 12, 'linear')],
    ['faint linear glow', glowOf(20, 25, 'linear')],
    ['bell of 15 mm', glowOf(120, 15, 'bell')],
    ['wide faint bell', glowOf(16, 30, 'bell')],
    ['a soft edge', glowOf(255, 1, 'linear')],
    // Even within, at an alpha of a veil: but its rim fades over 3 mm.
    ['a faint shadow', paintHazy((far) => (far < 12 ? 10 : 10 * (1 - (far - 12) / 3)))],
    ['deliberate translucency', paintHazy((_, x) => (x < 30 ? 40 : 0))],
  ])('leaves what fades alone: %s', (_, raster) => {
    expect(statusOf(raster)).toBe('passed');
  });

  it('sees what the base shows: white haze on white is none, black haze on slate hardly', () => {
    expect(statusOf(paintHazy(() => 8, [255, 255, 255]))).toBe('passed');
    const slate = { ...PLATE, baseColour: '#202224' };
    expect(statusOf(veilOf(4, 20), { blank: slate })).toBe('passed');
    expect(statusOf(veilOf(4, 20), { blank: blankOf('tile-ceramic-4.25in') })).toBe('found');
  });

  it('judges 16 bits and gray alike, and passes opaque art at once', () => {
    const raster = veilOf(8, 20);
    const deep = deepen(raster);
    expect(onlyFinding(judge(deep)).facts.areaMm2).toBeCloseTo(400, 6);
    const data = Uint8Array.from({ length: 180_000 }, (_, i) => raster.data[4 * (i >> 1) + (i % 2) * 3]!);
    expect(statusOf({ ...raster, model: 'gray', data })).toBe('found');
    const opaque = paintRaster(40, 40, () => GREEN);
    expect(statusOf({ ...opaque, hasAlpha: false, data: new Uint8Array(4800) })).toBe('passed');
  });

  it('is skipped where nothing is visible, and in inks with alpha', () => {
    expect(statusOf(paintRaster(9, 9, () => CLEAR))).toBe('skipped');
    const inks = { widthPx: 9, heightPx: 9, model: 'cmyk', hasAlpha: true, depth: 8 } as const;
    expect(statusOf({ ...inks, data: new Uint8Array(405).fill(9) })).toBe('skipped');
  });

  it('counts veils of their own', () => {
    const two = paintHazy((far, x, y) =>
      far > 4 && (x < 12 || x > 48) && y > 10 && y < 50 ? (x < 30 ? 6 : 11) : 0,
    );
    expect(findingsOf(outcomesOf(two, { widthMm: 60 }), 'alpha-haze')[0]!.facts.count).toBe(2);
  });
});
