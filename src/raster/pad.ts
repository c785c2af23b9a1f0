import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/** A canvas, and where on it the top left corner of a picture lies; `x` and `y` may be negative. */
export interface CanvasPlace {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly x: number;
  readonly y: number;
}

/**
 * The picture, or a rectangle within it, laid on a clear canvas. What overhangs is cut; a picture wholly beside
 * the canvas leaves it clear. The result always has alpha; a picture without is opaque where it lies.
 */
export function padRaster(raster: Raster, place: CanvasPlace, rectPx: RectPx = wholeOf(raster)): Raster {
  const { widthPx, heightPx, x, y } = place;
  const canvas = createRaster({ ...raster, widthPx, heightPx, hasAlpha: true });
  const left = Math.max(x, 0);
  const right = Math.min(x + rectPx.width, widthPx);
  const bottom = Math.min(y + rectPx.height, heightPx);
  if (right <= left) return canvas;
  const channels = channelsOf(raster);
  for (let row = Math.max(y, 0); row < bottom; row++) {
    const from = ((rectPx.y + row - y) * raster.widthPx + rectPx.x + left - x) * channels;
    const samples = raster.data.subarray(from, from + (right - left) * channels);
    const to = (row * widthPx + left) * channelsOf(canvas);
    if (raster.hasAlpha) canvas.data.set(samples, to);
    else setOpaque(canvas.data.subarray(to), samples, channels, fullScaleOf(raster));
  }
  return canvas;
}

/** The rectangle of all pixels. */
export function wholeOf(raster: Pick<Raster, 'widthPx' | 'heightPx'>): RectPx {
  return { x: 0, y: 0, width: raster.widthPx, height: raster.heightPx };
}

function setOpaque(to: Raster['data'], samples: Raster['data'], channels: number, opaque: number): void {
  let target = 0;
  for (let source = 0; source < samples.length; source += channels) {
    for (let channel = 0; channel < channels; channel++) to[target++] = samples[source + channel]!;
    to[target++] = opaque;
  }
}
