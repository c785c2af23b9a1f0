import type { PixelTransform } from '../icc/pixel-transform.ts';
import { channelsOf, createRaster, type Raster } from '../raster/raster.ts';

/**
 * An rgb raster of 8 or 16 bits in a printer's own colours, at 8 bits: rgb, with its alpha, where it had 8 bits in its
 * own memory; or opaque cmyk, anew. The transform takes three channels and gives three or four.
 */
export function convertForPrinter(raster: Raster, transform: PixelTransform): Raster {
  const { data, widthPx, heightPx, hasAlpha } = raster;
  const pixels = widthPx * heightPx;
  if (raster.model !== 'rgb') throw new Error('Expected an rgb raster to convert for a printer.');
  const model = transform.outputChannels === 4 ? 'cmyk' : 'rgb';
  if (model === 'cmyk' && hasAlpha) throw new Error('Expected an opaque raster to convert to inks.');
  if (data instanceof Uint8Array && model === 'rgb') {
    const stride = channelsOf(raster);
    transform.convert8(data, data, pixels, stride, stride);
    return raster;
  }
  const printed = createRaster({ widthPx, heightPx, model, hasAlpha, depth: 8 });
  const target = printed.data as Uint8Array;
  if (data instanceof Uint8Array) transform.convert8(data, target, pixels);
  else convertDeep(data, target, widthPx, transform, [channelsOf(raster), channelsOf(printed)]);
  return printed;
}

/** Row by row, and rounded last: the 16 bits of the art reach the transform. */
function convertDeep(
  data: Uint16Array,
  target: Uint8Array,
  widthPx: number,
  transform: PixelTransform,
  [from, to]: readonly [number, number],
): void {
  const deep = new Uint16Array(widthPx * to);
  for (let source = 0, at = 0; source < data.length; source += widthPx * from) {
    const row = data.subarray(source, source + widthPx * from);
    transform.convert16(row, deep, widthPx, from, to);
    if (to > transform.outputChannels)
      for (let x = 1; x <= widthPx; x += 1) deep[x * to - 1] = row[x * from - 1]!;
    for (const sample of deep) target[at++] = (sample + 128) / 257;
  }
}
