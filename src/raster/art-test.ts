import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** True where the pixel at x, y counts as art; false outside the picture. */
export type ArtTest = (x: number, y: number) => boolean;

/**
 * Makes the test for what counts as art: `visible` (alpha > 0) or `solid` (alpha of at least 50 %, so that a
 * glow may fade), both at the picture's own depth. With `whiteIsNoArt` pure white counts as nothing: on a
 * white base it prints nothing.
 */
export function makeArtTest(
  raster: Raster,
  options: { readonly from: 'visible' | 'solid'; readonly whiteIsNoArt: boolean },
): ArtTest {
  const { widthPx, heightPx, data, hasAlpha } = raster;
  const step = channelsOf(raster);
  const colours = hasAlpha ? step - 1 : step;
  const white = fullScaleOf(raster);
  const threshold = options.from === 'visible' ? 1 : Math.ceil(white / 2);
  const { whiteIsNoArt } = options;
  return (x, y) => {
    if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) return false;
    const at = (y * widthPx + x) * step;
    if (hasAlpha && data[at + colours]! < threshold) return false;
    if (!whiteIsNoArt) return true;
    for (let i = 0; i < colours; i += 1) if (data[at + i] !== white) return true;
    return false;
  };
}
