import { ART_MM, framed } from '../framed-art.ts';
import { paintRaster } from '../pictures.ts';
import { bold, grainy, STROKED_MM, stroked } from '../stroked-art.ts';
import type { FaultCase } from './fault-case.ts';

type Made = Pick<FaultCase, 'name' | 'fault' | 'raster'>;

const bordered = ({ name, fault, raster }: Made): FaultCase => ({
  name,
  code: 'narrow',
  fault,
  raster,
  widthMm: ART_MM,
});

/** Frames across the limit of 6 mm, thin and wide, on three grounds; frames that are open; stripes and grounds alone. */
export const THIN_BORDER_CASES: readonly FaultCase[] = [
  ...[0.5, 1, 2, 3, 4.5, 5.5, 5.8, 6.2, 7, 9, 14].flatMap((distance) =>
    ([0.3, 1, 3] as const).flatMap((line) =>
      (['plain', 'waves', 'grain'] as const).map((ground) =>
        bordered({
          name: `line of ${line} mm at ${distance} mm on ${ground}`,
          fault: distance < 6,
          raster: () => framed(distance, line, ground),
        }),
      ),
    ),
  ),
  ...[0.05, 0.1, 0.3, 0.5].map((open) =>
    bordered({
      name: `frame at 3 mm, open for ${open * 100} %`,
      fault: open <= 0.1,
      raster: () => framed(3, 1, 'plain', 'plate', open),
    }),
  ),
  ...(['plain', 'waves', 'grain'] as const).map((ground) =>
    bordered({ name: `${ground} alone`, fault: false, raster: () => framed(200, 1, ground) }),
  ),
  ...[6, 12, 24, 60].map((pitch) =>
    bordered({
      name: `stripes of ${pitch} px`,
      fault: false,
      raster: () =>
        paintRaster(636, 636, (_, y) => {
          const code = Math.floor(y / pitch) % 2 === 0 ? 40 : 220;
          return [code, code, code, 255];
        }),
    }),
  ),
  ...[6, 12, 24, 60].map((pitch) =>
    bordered({
      name: `checkers of ${pitch} px`,
      fault: false,
      raster: () =>
        paintRaster(636, 636, (x, y) => {
          const code = (Math.floor(x / pitch) + Math.floor(y / pitch)) % 2 === 0 ? 40 : 220;
          return [code, code, code, 255];
        }),
    }),
  ),
];

const drawn = (code: string, { name, fault, raster }: Made): FaultCase => ({
  name,
  code,
  fault,
  raster,
  widthMm: STROKED_MM,
});

/** Strokes across the limits of 0.25 mm (dark) and 0.5 mm (light), turned and in several contrasts; bold shapes and grain. */
export const THIN_DETAIL_CASES: readonly FaultCase[] = (
  [
    ['thin-strokes', 0.25, 0, 255],
    ['thin-strokes', 0.25, 120, 255],
    ['thin-strokes', 0.25, 20, 130],
    ['thin-gaps', 0.5, 255, 0],
    ['thin-gaps', 0.5, 230, 110],
  ] as const
).flatMap(([code, limit, ink, ground]) => [
  ...[0.3, 0.5, 0.7, 0.85, 1.15, 1.3, 1.6, 2.5, 5].flatMap((share) =>
    [0, 11, 22.5, 30, 45, 90, 120].map((degrees) =>
      drawn(code, {
        name: `${(share * limit).toFixed(3)} mm of ${ink} on ${ground}, turned by ${degrees} degrees`,
        fault: share < 1,
        raster: () => stroked(share * limit, degrees, ink, ground),
      }),
    ),
  ),
  drawn(code, { name: `bold shapes of ${ink} on ${ground}`, fault: false, raster: () => bold(ink, ground) }),
  ...(ink === 0 || ground === 0
    ? [0, 12, 40, 80, 160].map((grain) =>
        drawn(code, { name: `waves with a grain of ${grain}`, fault: false, raster: () => grainy(grain) }),
      )
    : []),
]);
