import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

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
  const read = readerFor(raster, boxPx);
  const sides = listSides(boxPx);
  const ground = findMiddleColour(sides.flat(), read);
  if (ground === null) return null;
  const isGround = (pixel: number) => {
    const [r, g, b, alpha] = read(pixel);
    return (
      alpha >= LEAST_ALPHA &&
      Math.abs(r - ground[0]) <= GROUND_TOLERANCE &&
      Math.abs(g - ground[1]) <= GROUND_TOLERANCE &&
      Math.abs(b - ground[2]) <= GROUND_TOLERANCE
    );
  };
  const shares = sides.map((side) => side.filter(isGround).length / side.length);
  const whole = sides.reduce((sum, side, i) => sum + shares[i]! * side.length, 0) / sides.flat().length;
  if (whole < RIM_SHARE || shares.some((share) => share < SIDE_SHARE)) return null;
  const colour = [ground[0] / 255, ground[1] / 255, ground[2] / 255] as const;
  if (!counts(colour)) return null;
  const mask = flood(sides.flat(), boxPx, isGround);
  let pixels = 0;
  for (const one of mask) pixels += one;
  return pixels > ALL * mask.length ? null : { boxPx, colour, pixels, mask };
}

/** Reads pixels of the box, by number, over white: r, g, b and alpha of 255. The array is the same each time. */
function readerFor(raster: Raster, { x, y, width }: RectPx): (pixel: number) => Quad {
  const { data, widthPx, hasAlpha } = raster;
  const step = channelsOf(raster);
  const full = fullScaleOf(raster);
  const [green, blue] = raster.model === 'gray' ? [0, 0] : [1, 2];
  const out: Quad = [0, 0, 0, 255];
  return (pixel) => {
    const at = ((y + Math.floor(pixel / width)) * widthPx + x + (pixel % width)) * step;
    const alpha = hasAlpha ? data[at + step - 1]! / full : 1;
    const over = (sample: number) => 255 * ((sample / full) * alpha + 1 - alpha);
    out[0] = over(data[at]!);
    out[1] = over(data[at + green]!);
    out[2] = over(data[at + blue]!);
    out[3] = 255 * alpha;
    return out;
  };
}

type Quad = [number, number, number, number];

/** Pixels of the top, bottom, left and right side, by number. */
function listSides({ width, height }: RectPx): readonly (readonly number[])[] {
  const across = Array.from({ length: width }, (_, i) => i);
  const down = Array.from({ length: height }, (_, i) => i * width);
  return [across, across.map((i) => i + (height - 1) * width), down, down.map((i) => i + width - 1)];
}

/** The median of each channel: where most pixels have one colour, it is that. null where most are clear. */
function findMiddleColour(
  pixels: readonly number[],
  read: (pixel: number) => Quad,
): readonly [number, number, number] | null {
  const seen = pixels.map((pixel) => [...read(pixel)]).filter((colour) => colour[3]! >= LEAST_ALPHA);
  if (seen.length < RIM_SHARE * pixels.length) return null;
  const median = (k: number) => seen.map((colour) => colour[k]!).sort((a, b) => a - b)[seen.length >> 1]!;
  return [median(0), median(1), median(2)];
}

/** Spreads from the rim over neighbours across and down. */
function flood(
  rim: readonly number[],
  { width, height }: RectPx,
  isGround: (pixel: number) => boolean,
): Uint8Array {
  const mask = new Uint8Array(width * height);
  const open: number[] = [];
  const visit = (pixel: number) => {
    if (mask[pixel] === 1 || !isGround(pixel)) return;
    mask[pixel] = 1;
    open.push(pixel);
  };
  for (const pixel of rim) visit(pixel);
  for (let pixel = open.pop(); pixel !== undefined; pixel = open.pop()) {
    const x = pixel % width;
    if (x > 0) visit(pixel - 1);
    if (x < width - 1) visit(pixel + 1);
    if (pixel >= width) visit(pixel - width);
    if (pixel < mask.length - width) visit(pixel + width);
  }
  return mask;
}
