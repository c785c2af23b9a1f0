import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { cutOut, disc, flower, glowing, outlined, patterned } from '../fringed-art.ts';
import { CLEAR, GREEN, paintRaster } from '../pictures.ts';
import { deepen, onlyFinding } from './colour-jobs.ts';
import { outcomesOf } from './jobs.ts';

const judge = (raster: Raster, request = {}) =>
  outcomesOf(raster, { widthMm: 44, ...request }).find(({ check }) => check === 'edge-fringe')!;
const statusOf = (raster: Raster, request = {}) => judge(raster, request).status;
const WHITE = [255, 255, 255] as const;
const BLACK = [0, 0, 0] as const;

describe('edge-fringe', () => {
  it.each([
    [0, 'passed'],
    [0.05, 'passed'],
    [0.5, 'found'],
    [1, 'found'],
  ])('a soft edge with %d of the background left in its colour', (left, status) => {
    for (const background of [WHITE, BLACK, [20, 230, 60] as const])
      expect(statusOf(cutOut({ background, left, softPx: 3 }))).toBe(status);
    expect(statusOf(cutOut({ background: WHITE, left, softPx: 3, subject: patterned, shape: flower }))).toBe(
      status,
    );
  });

  it.each([
    [8, 'passed'],
    [16, 'found'],
    [60, 'found'],
  ])('is judged as large as it is printed: 3 px at %d mm', (widthMm, status) => {
    expect(statusOf(cutOut({ background: BLACK, left: 1, softPx: 3 }), { widthMm })).toBe(status);
  });

  it('says how wide, along how much, of what colour and where', () => {
    const half = cutOut({
      background: BLACK,
      left: 1,
      softPx: 4,
      subject: (x) => (x < 150 ? [220, 130, 40] : [0, 0, 0]),
    });
    const { code, severity, facts, place, actual } = onlyFinding(judge(half));
    expect([code, severity, facts.colour]).toEqual(['fringe', 'advice', 'black']);
    // The right half is black itself, and cannot have a rim of black.
    expect(facts.sharePercent).toBeGreaterThan(35);
    expect(facts.sharePercent).toBeLessThan(55);
    // 4 px of 44 mm / 222 px, less what is under the limits of alpha and of the share of background.
    expect(actual!.value).toBeGreaterThan(0.5);
    expect(actual!.value).toBeLessThan(0.85);
    const { x, y } = place!.px;
    expect(Math.abs(disc(x + 0.5, y + 0.5))).toBeLessThan(4);
    expect(place!.mm.width).toBeCloseTo(0.2, 1);
  });

  it.each([
    ['white outline', outlined(4, WHITE)],
    ['thin black outline', outlined(1, BLACK)],
    ['glow', glowing(20, 0.7, WHITE)],
    ['drop shadow', glowing(10, 0.5, BLACK, 5)],
    ['tight shadow', glowing(6, 0.3, BLACK)],
    ['hard edge', paintRaster(300, 300, (x, y) => (x > 9 && x < 290 && y > 9 && y < 290 ? GREEN : CLEAR))],
  ])('leaves what is meant alone: %s', (_, raster) => {
    expect(statusOf(raster)).toBe('passed');
  });

  it('judges 16 bits and gray alike, and passes opaque art at once', () => {
    const raster = cutOut({ background: BLACK, left: 1, softPx: 3 });
    const deep = onlyFinding(judge(deepen(raster)));
    expect(deep.facts.widthMm).toBeCloseTo(Number(onlyFinding(judge(raster)).facts.widthMm), 2);
    const gray = Uint8Array.from({ length: 180_000 }, (_, i) => raster.data[4 * (i >> 1) + (i % 2) * 3]!);
    expect(statusOf({ ...raster, model: 'gray', data: gray })).toBe('found');
    expect(statusOf({ ...raster, hasAlpha: false, data: new Uint8Array(270_000) })).toBe('passed');
  });

  it('has an answer to degenerate art', () => {
    expect(statusOf(paintRaster(9, 9, () => CLEAR))).toBe('skipped');
    expect(statusOf(paintRaster(1, 1, () => GREEN))).toBe('skipped');
    // 44 mm in 125 px are 0.352 mm each, in 126 px 0.349.
    expect(statusOf(paintRaster(125, 125, () => GREEN))).toBe('skipped');
    expect(statusOf(paintRaster(126, 126, () => GREEN))).toBe('passed');
    expect(
      statusOf(
        paintRaster(1, 300, (_, y) => [9, 9, 9, y % 256]),
        { widthMm: 0.3 },
      ),
    ).toBe('passed');
    expect(statusOf(paintRaster(300, 300, (x, y) => ((x + y) % 2 ? GREEN : CLEAR)))).toBe('passed');
    const inks = { widthPx: 9, heightPx: 9, model: 'cmyk', hasAlpha: true, depth: 8 } as const;
    expect(statusOf({ ...inks, data: new Uint8Array(405).fill(9) })).toBe('skipped');
  });
});
