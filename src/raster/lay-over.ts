import { roundOver255 } from './flatten.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/**
 * Composites `layer` (8-bit rgb with alpha) over the part of `raster` (rgb at either depth, with or without alpha) that
 * begins at `at`, writing into the raster's own samples: for whoever owns them. Where the layer is clear nothing
 * changes. The layer must lie within the raster.
 */
export function layOver(raster: Raster, layer: Raster, at: { readonly x: number; readonly y: number }): void {
  if (raster.model !== 'rgb' || layer.model !== 'rgb' || !layer.hasAlpha || layer.depth !== 8)
    throw new Error('Expected an 8-bit rgb layer with alpha over an rgb raster.');
  const { data, hasAlpha, depth, widthPx } = raster;
  const channels = channelsOf(raster);
  const mix = depth === 8 && !hasAlpha ? mixOpaque8 : mixAny;
  for (let y = 0; y < layer.heightPx; y++) {
    let target = ((at.y + y) * widthPx + at.x) * channels;
    let source = y * layer.widthPx * 4;
    for (const end = source + layer.widthPx * 4; source < end; source += 4, target += channels)
      if (layer.data[source + 3]! > 0) mix(data, target, layer.data, source, fullScaleOf(raster), hasAlpha);
  }
}

type Samples = Raster['data'];

/** The usual case: a page is opaque. */
function mixOpaque8(data: Samples, target: number, layer: Samples, source: number): void {
  const alpha = layer[source + 3]!;
  for (let i = 0; i < 3; i++)
    data[target + i] = roundOver255(layer[source + i]! * alpha + data[target + i]! * (255 - alpha));
}

/** Source-over with straight alpha. @see Porter and Duff, "Compositing digital images", 1984 */
function mixAny(
  data: Samples,
  target: number,
  layer: Samples,
  source: number,
  full: number,
  hasAlpha: boolean,
): void {
  const alpha = layer[source + 3]! / 255;
  const below = (hasAlpha ? data[target + 3]! / full : 1) * (1 - alpha);
  const total = alpha + below;
  for (let i = 0; i < 3; i++)
    data[target + i] = Math.round(
      ((layer[source + i]! / 255) * full * alpha + data[target + i]! * below) / total,
    );
  if (hasAlpha) data[target + 3] = Math.round(total * full);
}
