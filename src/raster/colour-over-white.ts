import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** One pixel as it is printed: three samples of 0…255 composited over white in the samples' own space; white outside the raster. */
export type ColourAt = (xPx: number, yPx: number) => readonly [number, number, number];

const PAPER = [255, 255, 255] as const;

/** For looking at some pixels of a gray or rgb raster; who needs all of them takes bands. */
export function colourOverWhite(raster: Raster): ColourAt {
  const { widthPx, heightPx, model, hasAlpha, data } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const [green, blue] = model === 'rgb' ? [1, 2] : [0, 0];
  return (xPx, yPx) => {
    const x = Math.floor(xPx);
    const y = Math.floor(yPx);
    if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) return PAPER;
    const at = (y * widthPx + x) * channels;
    const alpha = hasAlpha ? data[at + channels - 1]! / full : 1;
    const over = (sample: number) => 255 * (1 - alpha + (alpha * sample) / full);
    return [over(data[at]!), over(data[at + green]!), over(data[at + blue]!)];
  };
}
