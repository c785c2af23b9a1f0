import sharp, { type KernelEnum, type Sharp } from 'sharp';
import { createRaster, type Raster } from '../src/raster/raster.ts';
import { paintRaster, seededNumbers } from './pictures.ts';

const PHOTO_PX = { width: 840, height: 600 } as const;

/** What a photograph may be of: soft clouds, things with outlines before a soft ground, and that above a grain of leaves. */
export type Scene = 'clouds' | 'things' | 'meadow';

/** Values of 0…1 at the corners of squares of `size` pixels, cubic in between. */
function softNoise(seed: number, size: number): (x: number, y: number) => number {
  const next = seededNumbers(seed);
  const across = Math.ceil(PHOTO_PX.width / size) + 2;
  const corners = Float64Array.from({ length: across * (Math.ceil(PHOTO_PX.height / size) + 2) }, next);
  const ease = (t: number) => t * t * (3 - 2 * t);
  return (x, y) => {
    const [i, j] = [Math.floor(x / size), Math.floor(y / size)];
    const [u, v] = [ease(x / size - i), ease(y / size - j)];
    const at = j * across + i;
    const top = corners[at]! * (1 - u) + corners[at + 1]! * u;
    const bottom = corners[at + across]! * (1 - u) + corners[at + across + 1]! * u;
    return top * (1 - v) + bottom * v;
  };
}

/** A made photograph with the grain of a sensor, 840 x 600 px, the same for the same scene. */
export function paintPhoto(scene: Scene): Raster {
  const [large, middle, small, fine] = [170, 60, 17, 5].map((size, i) => softNoise(31 + i, size)) as [
    ReturnType<typeof softNoise>,
    ReturnType<typeof softNoise>,
    ReturnType<typeof softNoise>,
    ReturnType<typeof softNoise>,
  ];
  const next = seededNumbers(5);
  return paintRaster(PHOTO_PX.width, PHOTO_PX.height, (x, y) => {
    let code = 70 + 90 * large(x, y) + 40 * middle(x, y) + 30 * (y / PHOTO_PX.height);
    if (scene !== 'clouds') {
      const disc = Math.hypot(x - 260, y - 210) < 120;
      const bar = Math.abs(x - 600 + 0.3 * y) < 60;
      code += disc ? -60 : bar ? 50 : 0;
    }
    if (scene === 'meadow' && y > 360) code += 90 * (small(x, y) - 0.5) + 110 * (fine(x, y) - 0.5);
    code += (next() - 0.5) * 3;
    const bounded = (value: number) => Math.max(0, Math.min(255, Math.round(value)));
    return [bounded(code * 1.05), bounded(code), bounded(code * 0.9 + 15), 255];
  });
}

function toSharp({ widthPx, heightPx, data }: Raster) {
  return sharp(data, { raw: { width: widthPx, height: heightPx, channels: 4 } });
}

async function toRaster(picture: Sharp): Promise<Raster> {
  const { data, info } = await picture.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return {
    ...createRaster({ widthPx: 1, heightPx: 1, model: 'rgb', hasAlpha: true, depth: 8 }),
    widthPx: info.width,
    heightPx: info.height,
    data: Uint8Array.from(data),
  };
}

/** The bytes of a PNG of it. */
export function pngOf(raster: Raster): Promise<Buffer> {
  return toSharp(raster).png().toBuffer();
}

/** As it comes out of a JPEG file (ITU-T T.81) of this quality of 1…100, by the usual scaling of the tables of its annex K. */
export async function throughJpeg(raster: Raster, quality: number): Promise<Raster> {
  const bytes = await toSharp(raster).removeAlpha().jpeg({ quality }).toBuffer();
  return toRaster(sharp(bytes));
}

/** Enlarged or reduced by a factor. */
export async function scaled(raster: Raster, factor: number, kernel: keyof KernelEnum): Promise<Raster> {
  return stretched(raster, factor, factor, kernel);
}

/** Enlarged or reduced by a factor along each direction. */
export async function stretched(
  raster: Raster,
  factorX: number,
  factorY: number,
  kernel: keyof KernelEnum,
): Promise<Raster> {
  if (factorX === 1 && factorY === 1) return raster;
  const width = Math.round(raster.widthPx * factorX);
  const height = Math.round(raster.heightPx * factorY);
  return toRaster(toSharp(raster).resize(width, height, { kernel, fit: 'fill' }));
}
