import { findFringe } from '../faults/find-fringe.ts';
import type { RimPixel } from '../faults/rim-pixels.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';

export default {
  id: 'recolour-fringe',
  title: 'Let the edge of a cut-out take its colour from within',
  reason:
    'Gives each pixel of the rim that the check of fringes finds the colour that the art has 5 pixels deep behind it. Alpha stays, so the shape does; so do pixels without anything of the old background.',
  source: ['the limits of the check of fringes'],
  answers: ['edge-fringe/fringe'],
  gentle: false,
  apply(raster, { job }: MendContext): MendedRaster {
    const placed = job();
    if (placed === null) return { raster };
    const pixelMm = Math.sqrt(pixelAreaOf(placed));
    let mended = raster;
    // Under one background there may lie another. Recoloured pixels have the colour within, and count no more.
    for (;;) {
      const fringe = findFringe(mended, placed.contentBoxPx, pixelMm);
      if (fringe === null) return { raster: mended };
      mended = recolour(mended, fringe.pixels);
    }
  },
} satisfies MendDefinition;

function recolour(raster: Raster, pixels: readonly RimPixel[]): Raster {
  const data = raster.data.slice();
  const step = channelsOf(raster);
  const full = fullScaleOf(raster);
  for (const { pixel, within } of pixels)
    for (let k = 0; k < step - 1; k += 1) data[pixel * step + k] = Math.round(within[k]! * full);
  return { ...raster, data };
}
