import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { deepen } from './colour-jobs.ts';
import { outcomesOf } from './jobs.ts';

const CUT_OUT = [
  'stray-pixels',
  'alpha-haze',
  'near-white-box',
  'hollow-alpha',
  'edge-fringe',
  'cut-off-edge',
  'marked-preview',
];

/** What the checks of cut-outs say, `check/code` each; anything broken would be listed as such. */
function sayings(raster: Raster): string[] {
  return outcomesOf(raster, { widthMm: 60 })
    .filter(({ check }) => CUT_OUT.includes(check))
    .flatMap((outcome) => {
      if (outcome.status === 'found') return outcome.findings.map(({ code }) => `${outcome.check}/${code}`);
      return outcome.status === 'passed' ? [] : [`${outcome.check} ${outcome.status}`];
    })
    .filter((saying) => saying !== 'marked-preview/preview-sized');
}

/** A design of 200 px in the middle of a canvas of 1000, and 60,000 specks of alpha 3 round it. */
function specked(): Raster {
  const next = seededNumbers(9);
  const raster = paintRaster(1000, 1000, (x, y) => (Math.hypot(x - 500, y - 500) < 100 ? GREEN : CLEAR));
  for (let left = 60_000; left > 0; ) {
    const [x, y] = [Math.floor(next() * 500) * 2, Math.floor(next() * 500) * 2];
    const at = (y * 1000 + x) * 4;
    if (raster.data[at + 3] !== 0 || Math.hypot(x - 500, y - 500) < 150) continue;
    raster.data.set([9, 9, 9, 3], at);
    left -= 1;
  }
  return raster;
}

/** Two grays and clear, as a palette of three entries decodes. */
const palette = paintRaster(120, 120, (x, y): Rgba => {
  const far = Math.hypot(x - 60, y - 60);
  return far < 20 ? GREEN : far < 50 ? [200, 60, 40, 255] : CLEAR;
});

const haze = (alpha: number): Raster => paintRaster(200, 200, () => [0, 0, 0, alpha]);
/** Visible by the least that 16 bits can hold. */
function barely(): Raster {
  const raster = deepen(haze(0));
  return { ...raster, data: raster.data.map((_, i) => (i % 4 === 3 ? 1 : 0)) };
}

/** Pixels wider than a rim. */
const COARSE = 'edge-fringe skipped';

const gray = { widthPx: 50, heightPx: 50, model: 'gray', hasAlpha: false, depth: 8 } as const;

describe('the checks of cut-outs on degenerate art', () => {
  it.each<[string, Raster, readonly string[]]>([
    ['one opaque pixel', paintRaster(1, 1, () => GREEN), [COARSE]],
    [
      'one faint pixel, which fills 60 mm',
      paintRaster(1, 1, () => [0, 0, 0, 8]),
      ['alpha-haze/veil', COARSE],
    ],
    ['one colour', paintRaster(200, 200, () => GREEN), []],
    ['one nearly white', paintRaster(200, 200, () => [250, 250, 250, 255]), []],
    ['one gray without alpha', { ...gray, data: new Uint8Array(2500).fill(90) }, [COARSE]],
    ['all haze', haze(8), ['alpha-haze/veil']],
    ['all haze below the step', haze(2), []],
    ['all almost opaque', haze(247), ['hollow-alpha/almost-opaque']],
    ['60,000 strays', specked(), ['stray-pixels/enlarges-box']],
    ['checkerboard of single pixels', paintRaster(400, 400, (x, y) => ((x + y) % 2 ? GREEN : CLEAR)), []],
    [
      'checkerboard of haze and nothing',
      paintRaster(400, 400, (x, y) => ((x + y) % 2 ? [0, 0, 0, 8] : CLEAR)),
      ['alpha-haze/veil'],
    ],
    ['1 px wide', paintRaster(1, 500, () => GREEN), [COARSE]],
    ['1 px high', paintRaster(500, 1, () => GREEN), []],
    ['16 bits, alpha of 1 in 65535', barely(), []],
    ['16 bits of haze', deepen(haze(8)), ['alpha-haze/veil']],
    ['palette', palette, [COARSE]],
  ])(
    '%s',
    (_, raster, expected) => {
      expect(sayings(raster)).toEqual(expected);
    },
    20_000,
  );

  it('nothing visible skips them all', () => {
    expect(sayings(paintRaster(20, 20, () => CLEAR))).toEqual(CUT_OUT.map((check) => `${check} skipped`));
  });
});
