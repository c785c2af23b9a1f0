import type { Artwork } from '../src/formats/artwork.ts';
import { createRaster, type Raster } from '../src/raster/raster.ts';

export type Rgba = readonly [number, number, number, number];

export const CLEAR: Rgba = [0, 0, 0, 0];
export const GREEN: Rgba = [40, 120, 60, 255];
export const WHITE: Rgba = [255, 255, 255, 255];

/** A picture whose every pixel is known: `paint` gives the straight RGBA of the pixel at x, y. */
export function paintRaster(
  widthPx: number,
  heightPx: number,
  paint: (x: number, y: number) => Rgba,
): Raster {
  const raster = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: true, depth: 8 });
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) raster.data.set(paint(x, y), (y * widthPx + x) * 4);
  return raster;
}

/** A block of one colour pasted at a known place on a clear canvas. */
export function blockRaster(
  canvas: readonly [number, number],
  block: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  colour: Rgba = GREEN,
): Raster {
  return paintRaster(canvas[0], canvas[1], (x, y) =>
    x >= block.x && x < block.x + block.width && y >= block.y && y < block.y + block.height ? colour : CLEAR,
  );
}

/** An artwork about whose file nothing is remarkable. */
export function artworkOf(raster: Raster, changes: Partial<Artwork> = {}): Artwork {
  return {
    format: 'png',
    sha256: '0'.repeat(64),
    raster,
    ownColours: null,
    statedPpi: null,
    orientation: 1,
    pages: 1,
    profile: { kind: 'none', model: 'rgb' },
    printRecord: null,
    vector: null,
    ...changes,
  };
}

/** Numbers from 0 to below 1, the same for the same seed (Numerical Recipes' linear congruential generator). */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 16) / 65536;
  };
}
