import { GRADED_MM, graded } from '../graded-art.ts';
import { paintPhoto, scaled, throughJpeg } from '../photo-like-art.ts';
import { paintRaster, type Rgba } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

const made = (name: string, fault: boolean, raster: FaultCase['raster']): FaultCase => ({
  name,
  code: 'steps',
  fault,
  raster,
  widthMm: GRADED_MM,
});

const WAYS = [0, 30, 45, 90, null] as const;
const wayOf = (degrees: number | null) => (degrees === null ? 'in rings' : `at ${degrees} degrees`);
const RED = [1, 0.4, 0.3] as const;

/** Flat areas side by side in an order of lightness, as posters have them: wide, and three shades of one thing. */
const poster = (x: number, y: number): Rgba => {
  const shade = Math.hypot(x - 320, y - 260) < 200 ? 1 - 0.12 * Math.floor((x - 120) / 140) : 1;
  const code = [60, 105, 150, 190, 225][Math.floor(y / 120)]!;
  return [Math.round(code * shade), Math.round(code * 0.9 * shade), Math.round(code * 0.5), 255];
};

/** Gradients across the limits of 1 L* and 1 mm, in five ways; smooth and dithered ones, posters and photographs. */
export const BANDING_CASES: readonly FaultCase[] = [
  ...[0.5, 0.7, 0.85, 1.3, 1.6, 2.5, 5].flatMap((step) =>
    [0.5, 0.75, 1.3, 2, 4].flatMap((bandMm) =>
      WAYS.map((degrees) =>
        made(`steps of ${step} L* every ${bandMm} mm, ${wayOf(degrees)}`, step > 1 && bandMm > 1, () =>
          graded({ step, bandMm, degrees }),
        ),
      ),
    ),
  ),
  ...WAYS.flatMap((degrees) => [
    made(`steps of 2 L* every 2 mm in red, ${wayOf(degrees)}`, true, () =>
      graded({ step: 2, bandMm: 2, degrees, tint: RED }),
    ),
    made(`steps of 2 L* every 2 mm, enlarged 3 x, ${wayOf(degrees)}`, true, async () =>
      scaled(await scaled(graded({ step: 2, bandMm: 2, degrees }), 1 / 3, 'nearest'), 3, 'cubic'),
    ),
    ...[0.2, 0.5, 1.5, 5].map((slope) =>
      made(`8 bits at ${slope} L* a mm, ${wayOf(degrees)}`, false, () =>
        graded({ step: 0, bandMm: 1, degrees }, slope),
      ),
    ),
    made(`8 bits in red, ${wayOf(degrees)}`, false, () =>
      graded({ step: 0, bandMm: 1, degrees, tint: RED }, 1),
    ),
    made(`steps of 2 L* every 2 mm, dithered, ${wayOf(degrees)}`, false, () =>
      graded({ step: 2, bandMm: 2, degrees, noise: 12 }),
    ),
  ]),
  made('poster', false, () => paintRaster(600, 600, poster)),
  ...(['clouds', 'things', 'meadow'] as const).flatMap((scene) => [
    made(`photograph of ${scene}`, false, () => paintPhoto(scene)),
    made(`photograph of ${scene}, JPEG of quality 85`, false, () => throughJpeg(paintPhoto(scene), 85)),
    made(`photograph of ${scene}, enlarged 3 x`, false, () => scaled(paintPhoto(scene), 3, 'cubic')),
  ]),
];
