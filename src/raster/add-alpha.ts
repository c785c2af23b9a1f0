import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** The same picture with alpha, all opaque; the very same where it has alpha already. */
export function addAlpha(raster: Raster): Raster {
  if (raster.hasAlpha) return raster;
  const { depth, widthPx, heightPx } = raster;
  const colours = channelsOf(raster);
  const samples = widthPx * heightPx * (colours + 1);
  const data = depth === 8 ? new Uint8Array(samples) : new Uint16Array(samples);
  data.fill(fullScaleOf(raster));
  for (let from = 0, to = 0; to < samples; from += colours, to += colours + 1)
    for (let k = 0; k < colours; k += 1) data[to + k] = raster.data[from + k]!;
  return { ...raster, hasAlpha: true, data };
}
