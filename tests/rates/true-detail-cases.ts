import type { Raster } from '../../src/raster/raster.ts';
import { paintLeaves } from '../leafy-art.ts';
import { paintPhoto, scaled } from '../photo-like-art.ts';
import { paintRaster, type Rgba } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

/** 320 px on so many mm are 200 ppi, between what stops and what is acceptable on ceramic. */
const WIDTH_MM = (320 / 200) * 25.4;

const made = (name: string, fault: boolean, raster: () => Raster | Promise<Raster>): FaultCase => ({
  name,
  code: 'below-acceptable',
  fault,
  raster,
  widthMm: WIDTH_MM,
});

const flat = (isInk: (x: number, y: number) => boolean) => () =>
  paintRaster(600, 500, (x, y): Rgba => (isInk(x, y) ? [30, 90, 40, 255] : [230, 220, 200, 255]));

/** Leaves enlarged by every kernel; the same, made photographs and flat art as they are. */
export const TRUE_DETAIL_CASES: readonly FaultCase[] = [
  ...[1.25, 1.5, 2, 2.5, 3, 4, 5, 6].flatMap((factor) =>
    (['nearest', 'linear', 'cubic', 'mitchell', 'lanczos2', 'lanczos3'] as const).map((kernel) =>
      made(`leaves enlarged ${factor} x by ${kernel}`, true, () => scaled(paintLeaves(), factor, kernel)),
    ),
  ),
  made('leaves', false, paintLeaves),
  ...(['clouds', 'things', 'meadow'] as const).map((scene) => made(scene, false, () => paintPhoto(scene))),
  ...[7, 11, 23].map((pitch) =>
    made(
      `stripes of ${pitch} px`,
      false,
      flat((x, y) => Math.floor((x + 0.37 * y) / pitch) % 2 === 0),
    ),
  ),
  ...[2, 4, 8, 16].map((side) =>
    made(
      `checkers of ${side} px`,
      false,
      flat((x, y) => (Math.floor(x / side) + Math.floor(y / side)) % 2 === 0),
    ),
  ),
  ...[9, 31].map((radius) =>
    made(
      `discs of ${radius} px`,
      false,
      flat((x, y) => Math.hypot((x % 97) - 48, (y % 89) - 44) < radius),
    ),
  ),
];
