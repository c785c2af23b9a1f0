import { channelsOf, createRaster, type Raster } from './raster.ts';

/** The picture as 8-bit rgb, with alpha where it has some: 16-bit samples become round(v * 255 / 65535), gray is repeated. */
export function toRgb8(raster: Raster): Raster {
  if (raster.model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  if (raster.model === 'rgb' && raster.depth === 8) return raster;
  const result = createRaster({ ...raster, model: 'rgb', depth: 8 });
  const { data } = raster;
  const from = channelsOf(raster);
  const to = channelsOf(result);
  const green = raster.model === 'rgb' ? 1 : 0;
  // 65535 = 255 * 257, and 257 is odd: no sample lies half way between two bytes.
  const perByte = raster.depth === 16 ? 257 : 1;
  const byteOf = (sample: number) => Math.trunc(sample / perByte + 0.5);
  for (let source = 0, target = 0; source < data.length; source += from, target += to) {
    result.data[target] = byteOf(data[source]!);
    result.data[target + 1] = byteOf(data[source + green]!);
    result.data[target + 2] = byteOf(data[source + 2 * green]!);
    if (raster.hasAlpha) result.data[target + 3] = byteOf(data[source + from - 1]!);
  }
  return result;
}
