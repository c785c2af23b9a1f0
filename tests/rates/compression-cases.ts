import { cropRaster } from '../../src/raster/crop.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { paintPhoto, type Scene, scaled, throughJpeg } from '../photo-like-art.ts';
import { paintRaster } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

const WIDTH_MM = 71;

const made = (name: string, fault: boolean, raster: FaultCase['raster']): FaultCase => ({
  name,
  code: 'visible',
  fault,
  raster,
  widthMm: WIDTH_MM,
});

/** Saved as JPEG, its first columns and rows cut off, so that the grid begins anywhere, then enlarged. */
async function saved(
  scene: Scene,
  quality: number,
  factor: number,
  kernel: 'cubic' | 'lanczos3',
): Promise<Raster> {
  const blocks = await throughJpeg(paintPhoto(scene), quality);
  const cut = cropRaster(blocks, { x: 3, y: 6, width: blocks.widthPx - 3, height: blocks.heightPx - 6 });
  return scaled(cut, factor, kernel);
}

const SCENES = ['clouds', 'things', 'meadow'] as const;
/** Steps between the means of blocks at these: 20, 10, 6.7 and 5 codes, and 1, 0.6 and 0.25: 16 of annex K by 5000 / quality or 200 - 2 quality percent, over 8. */
const STRONG = [5, 10, 15, 20];
const CLEAN = [75, 85, 95];

const checkers = (side: number, from: number, to: number) => () =>
  paintRaster(840, 600, (x, y) => {
    const code = (Math.floor(x / side) + Math.floor(y / side)) % 2 === 0 ? from : to;
    return [code, code, code, 255];
  });

/** Made photographs, saved strongly and well, as they are and enlarged; the same never saved; pictures with grids of their own. */
export const COMPRESSION_CASES: readonly FaultCase[] = [
  ...SCENES.flatMap((scene) =>
    [...STRONG, ...CLEAN].flatMap((quality) =>
      ([1, 1.37, 2, 2.5, 4] as const).map((factor) =>
        made(`${scene}, JPEG of quality ${quality}, enlarged ${factor} x`, quality <= 20, () =>
          saved(scene, quality, factor, factor === 2.5 ? 'lanczos3' : 'cubic'),
        ),
      ),
    ),
  ),
  ...SCENES.flatMap((scene) =>
    ([1, 1.37, 2, 3, 4] as const).flatMap((factor) =>
      (['nearest', 'cubic', 'lanczos3'] as const).map((kernel) =>
        made(`${scene}, never saved, enlarged ${factor} x by ${kernel}`, false, () =>
          scaled(paintPhoto(scene), factor, kernel),
        ),
      ),
    ),
  ),
  ...[4, 8, 16, 24].flatMap((side) => [
    made(`checkers of ${side} px, strong`, false, checkers(side, 40, 220)),
    made(`checkers of ${side} px, faint`, false, checkers(side, 120, 128)),
  ]),
  ...[8, 16].map((side) =>
    made(`single pixels enlarged ${side} x`, false, () =>
      scaled(cropRaster(paintPhoto('meadow'), { x: 200, y: 330, width: 100, height: 75 }), side, 'nearest'),
    ),
  ),
  ...[6, 8, 13].map((pitch) =>
    made(`screen of dots, ${pitch} px`, false, () =>
      paintRaster(840, 600, (x, y) => {
        const code = Math.hypot((x % pitch) - pitch / 2, (y % pitch) - pitch / 2) < pitch / 3 ? 90 : 220;
        return [code, code, code, 255];
      }),
    ),
  ),
  ...[8, 20].map((pitch) =>
    made(`squared paper of ${pitch} px`, false, () =>
      paintRaster(840, 600, (x, y) =>
        x % pitch === 0 || y % pitch === 0 ? [215, 225, 240, 255] : [250, 250, 250, 255],
      ),
    ),
  ),
];
