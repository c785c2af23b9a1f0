import { BACKGROUNDS, cutOut, disc, flower, glowing, outlined, patterned, plain } from '../fringed-art.ts';
import type { FaultCase } from './fault-case.ts';

const SUBJECTS = { plain: { subject: plain, shape: disc }, patterned: { subject: patterned, shape: flower } };
/** All is printed so large that a pixel is 0.2 mm, where nothing else is said. */
const WIDTH_MM = 44;
const own = { code: 'fringe', widthMm: WIDTH_MM } as const;

/** Every background, strength and width; what is under a quarter of the background counts as clean. */
const swept: FaultCase[] = Object.entries(BACKGROUNDS).flatMap(([name, background]) =>
  Object.entries(SUBJECTS).flatMap(([kind, subject]) =>
    [0, 0.05, 0.3, 0.5, 0.75, 1].flatMap((left) =>
      [1, 2, 3, 5].flatMap((softPx) =>
        [1, 1.5].map((loose) => ({
          ...own,
          name: `${kind} cut out of ${name}, ${Math.round(100 * left)} % of it left over ${softPx} px, alpha x ${loose}`,
          fault: left >= 0.3,
          raster: () => cutOut({ background, left, softPx, loose, ...subject }),
        })),
      ),
    ),
  ),
);

/** The soft edge of 2 px printed at sizes that sweep the limit of width, 0.1 mm. */
const sizes: FaultCase[] = [6, 8, 9, 10, 14, 16, 20, 30, 60].map((widthMm) => ({
  ...own,
  widthMm,
  name: `2 px of black at ${widthMm} mm, ${((2 * widthMm) / 221).toFixed(3)} mm wide`,
  fault: (2 * widthMm) / 221 >= 0.1,
  raster: () => cutOut({ background: [0, 0, 0], left: 1, softPx: 2 }),
}));

const outlines: FaultCase[] = [1, 2, 3, 6, 12].flatMap((widthPx) =>
  Object.entries(BACKGROUNDS).flatMap(([name, colour]) =>
    [1, 2].map((softPx) => ({
      ...own,
      name: `outline of ${name}, ${widthPx} px, its edge soft over ${softPx} px`,
      fault: false,
      raster: () => outlined(widthPx, colour, softPx),
    })),
  ),
);

const glows: FaultCase[] = [6, 10, 20, 40].flatMap((reachPx) =>
  Object.entries(BACKGROUNDS).flatMap(([name, colour]) =>
    [0, reachPx / 2].flatMap((shiftPx) =>
      [0.3, 0.7].map((most) => ({
        ...own,
        name: `${shiftPx > 0 ? 'shadow' : 'glow'} of ${name}, ${reachPx} px, from ${100 * most} %`,
        fault: false,
        raster: () => glowing(reachPx, most, colour, shiftPx),
      })),
    ),
  ),
);

export const EDGE_FRINGE_CASES: readonly FaultCase[] = [...swept, ...sizes, ...outlines, ...glows];
