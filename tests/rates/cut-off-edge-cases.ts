import { createRaster } from '../../src/raster/raster.ts';
import { type AlphaAt, cutDisc, cutGlow, cutWedge, paintAlpha, widthMmOf } from '../cut-off-art.ts';
import type { FaultCase } from './fault-case.ts';

const QUARTERS = [0, 1, 2, 3] as const;

function turned(code: string, name: string, fault: boolean, alphaAt: AlphaAt): readonly FaultCase[] {
  return QUARTERS.map((turns) => ({
    code,
    name: `${name}, turned ${turns} x`,
    fault,
    raster: () => paintAlpha(alphaAt, turns),
    widthMm: widthMmOf(paintAlpha(alphaAt, turns)),
  }));
}

/** Heights across the limit of 0.5 mm; a chord of 5 mm at a radius of 3 mm lacks 1.3 mm, at 24 mm 0.13. */
const DISCS = [3, 8, 24].flatMap((radius) =>
  [-1, 0, 0.1, 0.3, 0.6, 0.8, 1.5, 3, 10].flatMap((missing) => {
    const chord = 2 * Math.sqrt(Math.max(0, radius ** 2 - (radius - missing) ** 2));
    return missing >= 2 * radius || missing > 2.5 * radius
      ? []
      : turned(
          'cut-shape',
          `a disc of radius ${radius} mm that lacks ${missing} mm`,
          missing >= 0.5 && chord >= 5,
          cutDisc(missing, radius),
        );
  }),
);

const WEDGES = [-60, -40, -20, -12, 0, 5, 12, 20, 40, 60].flatMap((degrees) =>
  turned(
    'cut-shape',
    `a wedge ${degrees} degrees off the right angle`,
    Math.abs(degrees) > 10,
    cutWedge(degrees),
  ),
);

const GLOWS = [0, 0.03, 0.06, 0.1, 0.15, 0.2, 0.3, 0.5, 0.7].flatMap((atEnd) =>
  // An alpha of 20 in 255 is 0.08.
  turned('cut-glow', `a glow cut at ${100 * atEnd} % of its alpha`, atEnd > 0.08, cutGlow(atEnd)),
);

/** A disc's distance, of which many shapes are made. */
const far = (x: number, y: number, cx = 150, cy = 150) => Math.hypot(x - cx, y - cy);

const MEANT: Readonly<Record<string, AlphaAt>> = {
  'full bleed': () => 1,
  'full bleed with round corners': (x, y) =>
    20 - Math.hypot(Math.max(0, Math.abs(x - 150) - 130), Math.max(0, Math.abs(y - 150) - 130)),
  'a tag with round corners of 2 mm at the lower end': (x, y) =>
    10.5 - Math.hypot(Math.max(0, Math.abs(x - 150) - 80), Math.max(0, Math.abs(y - 200) - 90)),
  'a tag with round corners of 6 mm at the lower end': (x, y) =>
    30.5 - Math.hypot(Math.max(0, Math.abs(x - 150) - 60), Math.max(0, Math.abs(y - 200) - 70)),
  'a band from side to side': (_, y) => (y > 100 && y < 200 ? 1 : 0),
  'a slanted band from side to side, trimmed': (x, y) => (Math.abs(y - x) < 150 ? 1 : 0),
  'a ring that just touches the canvas': (x, y) => 10 - Math.abs(far(x, y) - 140),
  'a frame': (x, y) => (Math.min(x, y, 300 - x, 300 - y) < 15 ? 1 : 0),
  'a full picture with soft sides': (x, y) => Math.min(x, y, 300 - x, 300 - y) / 20,
  'a full picture with a hole': (x, y) => far(x, y) - 60,
  'letters that end at the canvas': (x, y) => (x % 60 < 32 && y > 120 ? 1 : 0),
  'stems of 3 mm that reach the lower end': (x, y) => (x % 75 < 15 && y > 60 ? 1 : 0),
  'a half, a ground': (_, y) => (y > 150 ? 1 : 0),
  'a house, trimmed': (x, y) => (y > 150 ? 1 : y / 2 - Math.abs(x - 150) + 75),
  'a heart that touches three sides': (x, y) =>
    150 - Math.max(Math.abs(x - 150), 0) - Math.max(0, y - 150) + (y < 150 ? Math.max(0, 150 - y) / 3 : 0),
  'a trunk with roots that touch the ground': (x, y) =>
    20 + (y > 240 ? 60 - Math.sqrt(Math.max(0, 60 ** 2 - (y - 240) ** 2)) : 0) - Math.abs(x - 150),
  'a translucent sheet of half alpha': (x, y) => (x > 50 && x < 250 && y > 100 ? 0.5 : 0),
  'a fade from left to right': (x, y) => (y > 100 ? x / 300 : 0),
};

const FINE = Object.entries(MEANT).flatMap(([name, alphaAt]) => [
  ...turned('cut-shape', name, false, alphaAt),
  ...turned('cut-glow', name, false, alphaAt),
]);

const OPAQUE: readonly FaultCase[] = [60, 100, 200].map((side) => ({
  code: 'cut-shape',
  widthMm: 60,
  name: `opaque art of ${side} px, without alpha`,
  fault: false,
  raster: () => createRaster({ widthPx: side, heightPx: side, model: 'rgb', hasAlpha: false, depth: 8 }),
}));

/** 5 px a millimetre. */
export const CUT_OFF_EDGE_CASES: readonly FaultCase[] = [...DISCS, ...WEDGES, ...GLOWS, ...FINE, ...OPAQUE];
