import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/**
 * Lays a picture beneath what a canvas with alpha shows, in the canvas' own samples: it is seen where the canvas is
 * clear, and through it where that is partly clear. What overhangs is left out. Model and depth must be the same.
 * @see Porter and Duff, "Compositing digital images", 1984: destination over, with straight alpha
 */
export function layBeneath(canvas: Raster, picture: Raster, x: number, y: number): void {
  if (!canvas.hasAlpha || canvas.model !== picture.model || canvas.depth !== picture.depth)
    throw new Error('Expected a canvas with alpha and a picture of its kind.');
  const colours = channelsOf(canvas) - 1;
  const step = channelsOf(picture);
  const full = fullScaleOf(canvas);
  const left = Math.max(x, 0);
  const right = Math.min(x + picture.widthPx, canvas.widthPx);
  const bottom = Math.min(y + picture.heightPx, canvas.heightPx);
  for (let row = Math.max(y, 0); row < bottom; row += 1) {
    let target = (row * canvas.widthPx + left) * (colours + 1);
    let source = ((row - y) * picture.widthPx + left - x) * step;
    for (let column = left; column < right; column += 1, target += colours + 1, source += step) {
      const below = picture.hasAlpha ? picture.data[source + colours]! : full;
      const above = canvas.data[target + colours]!;
      if (below === 0 || above === full) continue;
      const shown = (below * (full - above)) / full;
      const alpha = above + shown;
      for (let i = 0; i < colours; i += 1)
        canvas.data[target + i] = Math.round(
          (canvas.data[target + i]! * above + picture.data[source + i]! * shown) / alpha,
        );
      canvas.data[target + colours] = Math.round(alpha);
    }
  }
}
