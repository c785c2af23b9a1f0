import { makeBendSampler } from './bend-sampler.ts';
import { channelsOf, createRaster, type Raster } from './raster.ts';

/** How an upright picture is bent into a ring sector that is even to left and right. Pixels; middles at .5. */
export interface Bend {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Middle of the arcs on the bent picture. */
  readonly apexPx: { readonly x: number; readonly y: number };
  /** Radius of the arc that the middle row becomes, which keeps its length. */
  readonly middleRadiusPx: number;
  /** Where the middle of the arcs lies. */
  readonly opens: 'below' | 'above';
}

/**
 * The picture bent: its columns become rays, its rows arcs, the middle row keeps its length. Resampled by the cubic
 * kernel, weighted by alpha, as wide along the arc as the picture is squeezed there. A pixel whose middle lies beyond
 * the picture is clear; the result always has alpha. Beyond the picture's rim its border pixel is repeated.
 * @see R. Keys (1981) as findCubicTaps
 */
export function bendRaster(raster: Raster, bend: Bend): Raster {
  const bent = createRaster({ ...raster, widthPx: bend.widthPx, heightPx: bend.heightPx, hasAlpha: true });
  const { apexPx, middleRadiusPx, opens } = bend;
  const { widthPx, heightPx } = raster;
  const down = opens === 'below' ? -1 : 1;
  const channels = channelsOf(bent);
  const sample = makeBendSampler(raster, bent.data);
  for (let y = 0; y < bend.heightPx; y += 1) {
    const along = (y + 0.5 - apexPx.y) * down;
    for (let x = 0; x < bend.widthPx; x += 1) {
      const across = x + 0.5 - apexPx.x;
      const radius = Math.sqrt(across * across + along * along);
      const sourceY = heightPx / 2 + (radius - middleRadiusPx) * down;
      if (sourceY < 0 || sourceY >= heightPx) continue;
      const sourceX = widthPx / 2 + Math.atan2(across, along) * middleRadiusPx;
      if (sourceX < 0 || sourceX >= widthPx) continue;
      const squeeze = radius < middleRadiusPx ? middleRadiusPx / radius : 1;
      sample(sourceX - 0.5, sourceY - 0.5, squeeze, (y * bend.widthPx + x) * channels);
    }
  }
  return bent;
}
