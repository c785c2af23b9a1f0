import type { Sharp } from 'sharp';
import type { ColourModel, Raster } from '../raster/raster.ts';
import type { Limits } from './limits.ts';
import { decodeError, type OpenPicture } from './open-picture.ts';

/**
 * Every device sample exactly as the file holds it, at the file's own depth, orientation applied, alpha straight.
 * 1-, 2- and 4-bit samples are scaled to 8 bits, 10- and 12-bit ones to 16, so that full scale stays full scale.
 * @throws `damaged`, `too-slow`, `unsupported-format`
 */
export async function decodePicture(picture: OpenPicture, limits: Limits): Promise<Raster> {
  const { model, hasAlpha, depth } = picture;
  // An 8-bit gray picture loses its alpha on the way out of the decoder, unless it leaves as RGBA.
  const asRgba = model === 'gray' && hasAlpha && depth === 8;
  const pipeline = inSpace(picture.pipeline(), asRgba ? 'rgb' : model, depth);
  const raster = await decode(picture, pipeline, { model: asRgba ? 'rgb' : model, hasAlpha, depth }, limits);
  if (asRgba) return keepGrayAndAlpha(raster);
  if (depth === 16 && picture.storedBits < 16) stretchTo16Bits(raster.data, picture.storedBits);
  return raster;
}

/** Without its space named, the decoder's output is always 8-bit RGB. */
function inSpace(pipeline: Sharp, model: ColourModel, depth: 8 | 16): Sharp {
  if (model === 'cmyk') return pipeline.pipelineColourspace('cmyk').toColourspace('cmyk');
  const spaces = { gray: { 8: 'b-w', 16: 'grey16' }, rgb: { 8: 'srgb', 16: 'rgb16' } } as const;
  return pipeline.toColourspace(spaces[model][depth]);
}

async function decode(
  picture: OpenPicture,
  pipeline: Sharp,
  shape: Pick<Raster, 'model' | 'hasAlpha' | 'depth'>,
  limits: Limits,
): Promise<Raster> {
  const { data, info } = await pipeline
    .raw({ depth: shape.depth === 8 ? 'uchar' : 'ushort' })
    .toBuffer({ resolveWithObject: true })
    .catch((error: unknown) => Promise.reject(decodeError(picture.format, error, limits)));
  return {
    ...shape,
    widthPx: info.width,
    heightPx: info.height,
    data: shape.depth === 8 ? asBytes(data) : asShorts(data),
  };
}

/** A view, not a copy: the picture stands in memory once. */
function asBytes(data: Buffer): Uint8Array {
  return new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
}

function asShorts(data: Buffer): Uint16Array {
  const aligned = data.byteOffset % 2 === 0 ? data : new Uint8Array(data);
  return new Uint16Array(aligned.buffer, aligned.byteOffset, aligned.byteLength / 2);
}

function keepGrayAndAlpha({ data, ...shape }: Raster): Raster {
  const pixels = shape.widthPx * shape.heightPx;
  const kept = new Uint8Array(pixels * 2);
  for (let pixel = 0; pixel < pixels; pixel++) {
    kept[pixel * 2] = data[pixel * 4]!;
    kept[pixel * 2 + 1] = data[pixel * 4 + 3]!;
  }
  return { ...shape, model: 'gray', data: kept };
}

/** The decoder shifts 10- and 12-bit samples up and leaves the low bits clear: white would be 65472, not 65535. */
function stretchTo16Bits(data: Raster['data'], storedBits: number): void {
  for (let index = 0; index < data.length; index++) data[index] = data[index]! | (data[index]! >> storedBits);
}
