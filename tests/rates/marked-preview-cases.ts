import { createRaster } from '../../src/raster/raster.ts';
import { layOverlay } from '../overlaid-art.ts';
import { paintPhoto } from '../photo-like-art.ts';
import { paintRaster } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

/** Below, at and above the limit. */
const SIZES: readonly FaultCase[] = [640, 998, 999, 1000, 1001, 1600].map((side) => ({
  name: `${side} px on the longer side`,
  code: 'preview-sized',
  fault: side < 1000,
  widthMm: 60,
  raster: () => {
    const raster = createRaster({ widthPx: 40, heightPx: side, model: 'rgb', hasAlpha: true, depth: 8 });
    raster.data.fill(120);
    return raster;
  },
}));

const SCENES = ['clouds', 'things', 'meadow'] as const;
const overlaid = (name: string, fault: boolean, raster: FaultCase['raster']): FaultCase => ({
  name,
  code: 'repeated-overlay',
  fault,
  widthMm: 71,
  raster,
});

/** Marks of three steps and four strengths over made photographs. Under an opacity of 0.1 they hardly show. */
const MARKED = SCENES.flatMap((scene) =>
  [110, 160, 230].flatMap((stepPx) =>
    [
      [255, 0.12],
      [255, 0.3],
      [0, 0.2],
      [0, 0.5],
    ].map(([gray, opacity], i) =>
      overlaid(`${scene} under marks of ${gray} at ${opacity}, every ${stepPx} px`, true, () =>
        layOverlay(paintPhoto(scene), {
          stepPx,
          turnDeg: [-30, 0, 20, -45][i]!,
          gray: gray!,
          opacity: opacity!,
        }),
      ),
    ),
  ),
);

/** Art that repeats itself, and marks that hide what is under them: patterns are art. */
const PATTERNS = [40, 64, 90].flatMap((side) => [
  overlaid(`a pattern of discs every ${side} px`, false, () =>
    paintRaster(840, 600, (x, y) =>
      Math.hypot((x % side) - side / 2, (y % side) - side / 2) < side / 4
        ? [60, 110, 70, 255]
        : [225, 215, 190, 255],
    ),
  ),
  overlaid(`checkers of ${side} px`, false, () =>
    paintRaster(840, 600, (x, y) =>
      (Math.floor(x / side) + Math.floor(y / side)) % 2 === 0 ? [60, 60, 60, 255] : [200, 200, 200, 255],
    ),
  ),
  ...SCENES.map((scene) =>
    overlaid(`${scene} behind opaque marks every ${3 * side} px`, false, () =>
      layOverlay(paintPhoto(scene), { stepPx: 3 * side, turnDeg: 0, gray: 255, opacity: 1 }),
    ),
  ),
]);

export const MARKED_PREVIEW_CASES: readonly FaultCase[] = [
  ...SIZES,
  ...MARKED,
  ...SCENES.map((scene) => overlaid(`${scene}, unmarked`, false, () => paintPhoto(scene))),
  ...PATTERNS,
];
