import { type ReadOptions, readArtwork } from '../../src/formats/read-artwork.ts';
import type { Raster } from '../../src/raster/raster.ts';

export const NS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
/** A drawing with these attributes of its root; `before` stands before the root. */
export const svg = (attributes: string, inner: string, before = '') =>
  Buffer.from(`${before}<svg ${NS} ${attributes}>${inner}</svg>`);
export const draw = async (bytes: Uint8Array, options?: ReadOptions) =>
  (await readArtwork(bytes, options)).raster;
export const factsOf = async (bytes: Uint8Array, options?: ReadOptions) =>
  (await readArtwork(bytes, options)).vector!;

/** Box of the pixels whose alpha is at least half, as [x, y, width, height]. */
export function opaqueBox({ widthPx, heightPx, data }: Raster): number[] {
  let [left, top, right, bottom] = [widthPx, heightPx, 0, 0];
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++)
      if (data[(y * widthPx + x) * 4 + 3]! >= 128)
        [left, top, right, bottom] = [
          Math.min(left, x),
          Math.min(top, y),
          Math.max(right, x + 1),
          Math.max(bottom, y + 1),
        ];
  return [left, top, right - left, bottom - top];
}
export const pixelAt = ({ widthPx, data }: Raster, x: number, y: number) => [
  ...data.subarray((y * widthPx + x) * 4, (y * widthPx + x) * 4 + 4),
];

/** The code of the refusal, null when the drawing is read. */
export const codeOf = (bytes: Uint8Array, options?: ReadOptions) =>
  readArtwork(bytes, options).then(
    () => null,
    (error: { code?: string }) => error.code,
  );
