import type { RectPx } from '../geometry/rectangle.ts';
import { type BoxPixels, pixelInRaster, pixelsOfBox } from '../raster/box-pixels.ts';
import type { Raster } from '../raster/raster.ts';

/** A ground of one colour that fills a rectangle round a subject. */
export interface FlatBox {
  readonly boxPx: RectPx;
  /** Median of the rim as it prints over white, 0…1 each; gray three times. */
  readonly colour: readonly [number, number, number];
  readonly pixels: number;
  /** 1 for each of its pixels, rows of `boxPx` from the top. */
  readonly mask: Uint8Array;
}

/** Farther than this from the ground's colour, in any channel of 255, is not ground: JPEG noise stays within (own choice). */
export const GROUND_TOLERANCE = 6;
/** Of the rim as a whole, and of each of its sides: a subject may reach a side, and corners may be round (own choice). */
const RIM_SHARE = 0.85;
const SIDE_SHARE = 0.5;
/** Fainter than this is haze, in which no box is seen (alpha of 255). */
const LEAST_ALPHA = 13;
/** More than this of the box is no ground but the art itself: one colour from rim to rim. */
const ALL = 0.995;

/**
 * The flat ground that meets the rim of the visible box on every side, and all that hangs together with it
 * (4-connected). null where the rim is not of one colour, or of one that does not count, where there is nothing
 * besides the ground, in a box under 3 px, and in inks. Takes a walk along the rim; one over the box only where its
 * colour counts.
 */
export function findFlatBox(
  raster: Raster,
  boxPx: RectPx,
  counts: (colour: FlatBox['colour']) => boolean,
): FlatBox | null {
  if (raster.model === 'cmyk' || boxPx.width < 3 || boxPx.height < 3) return null;
  const box = pixelsOfBox(raster, boxPx);
  const sides = listSides(boxPx);
  const ground = findMiddleColour(sides.flat(), box);
  if (ground === null) return null;
  const shares = sides.map((side) => countGround(box, ground, side) / side.length);
  const whole = sides.reduce((sum, side, i) => sum + shares[i]! * side.length, 0) / sides.flat().length;
  if (whole < RIM_SHARE || shares.some((share) => share < SIDE_SHARE)) return null;
  const colour = [ground[0] / 255, ground[1] / 255, ground[2] / 255] as const;
  if (!counts(colour)) return null;
  const mask = flood(sides.flat(), box, ground);
  let pixels = 0;
  for (const one of mask) pixels += one;
  return pixels > ALL * mask.length ? null : { boxPx, colour, pixels, mask };
}

type Colour = readonly [number, number, number];

/** 0…1. */
function alphaAt({ data, hasAlpha, step, full }: BoxPixels, at: number): number {
  return hasAlpha ? data[at + step - 1]! / full : 1;
}

/** A sample over white, 0…255. */
function overWhite(sample: number, full: number, alpha: number): number {
  return 255 * ((sample / full) * alpha + 1 - alpha);
}

function isGround(box: BoxPixels, ground: Colour, pixel: number): boolean {
  const { data, full } = box;
  const at = pixelInRaster(box, pixel) * box.step;
  const alpha = alphaAt(box, at);
  return (
    255 * alpha >= LEAST_ALPHA &&
    Math.abs(overWhite(data[at]!, full, alpha) - ground[0]) <= GROUND_TOLERANCE &&
    Math.abs(overWhite(data[at + box.green]!, full, alpha) - ground[1]) <= GROUND_TOLERANCE &&
    Math.abs(overWhite(data[at + box.blue]!, full, alpha) - ground[2]) <= GROUND_TOLERANCE
  );
}

function countGround(box: BoxPixels, ground: Colour, pixels: readonly number[]): number {
  let count = 0;
  for (const pixel of pixels) if (isGround(box, ground, pixel)) count += 1;
  return count;
}

/** Pixels of the top, bottom, left and right side, by number. */
function listSides({ width, height }: RectPx): readonly (readonly number[])[] {
  const across = Array.from({ length: width }, (_, i) => i);
  const down = Array.from({ length: height }, (_, i) => i * width);
  return [across, across.map((i) => i + (height - 1) * width), down, down.map((i) => i + width - 1)];
}

/** The median of each channel: where most pixels have one colour, it is that. null where most are clear. */
function findMiddleColour(pixels: readonly number[], box: BoxPixels): Colour | null {
  const seen: number[] = [];
  for (const pixel of pixels) {
    const at = pixelInRaster(box, pixel) * box.step;
    if (255 * alphaAt(box, at) >= LEAST_ALPHA) seen.push(at);
  }
  if (seen.length < RIM_SHARE * pixels.length) return null;
  return [middleOf(box, seen, 0), middleOf(box, seen, box.green), middleOf(box, seen, box.blue)];
}

function middleOf(box: BoxPixels, places: readonly number[], channel: number): number {
  const samples = new Float64Array(places.length);
  for (let i = 0; i < places.length; i += 1) {
    const at = places[i]!;
    samples[i] = overWhite(box.data[at + channel]!, box.full, alphaAt(box, at));
  }
  return samples.sort()[samples.length >> 1]!;
}

/** Spreads from the rim over neighbours across and down. */
function flood(rim: readonly number[], box: BoxPixels, ground: Colour): Uint8Array {
  const { width, height } = box.boxPx;
  const mask = new Uint8Array(width * height);
  const open: number[] = [];
  for (const pixel of rim) visit(box, ground, mask, open, pixel);
  for (let pixel = open.pop(); pixel !== undefined; pixel = open.pop()) {
    const x = pixel % width;
    if (x > 0) visit(box, ground, mask, open, pixel - 1);
    if (x < width - 1) visit(box, ground, mask, open, pixel + 1);
    if (pixel >= width) visit(box, ground, mask, open, pixel - width);
    if (pixel < mask.length - width) visit(box, ground, mask, open, pixel + width);
  }
  return mask;
}

function visit(box: BoxPixels, ground: Colour, mask: Uint8Array, open: number[], pixel: number): void {
  if (mask[pixel] === 1 || !isGround(box, ground, pixel)) return;
  mask[pixel] = 1;
  open.push(pixel);
}
