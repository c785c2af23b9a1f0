import { practiceLimit } from '../catalogue/practice.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import { measureNearest } from './nearest-distance.ts';

const OPAQUE = practiceLimit('nearly-opaque').value;
/** Fainter is haze, which is no part of a rim (alpha of 255, as for boxes). */
const LEAST_ALPHA = 13;
/** So many pixels to either side of the end of the opaque art are its rim; softer ends are glows and shadows (own choice). */
export const REACH = 4;
/** Clear pixels farther away do not matter. */
const FAR = 2 * REACH + 2;
/** Side of the squares that are looked at one by one, px. */
const TILE = 128;

/** How deep in the opaque art, or how far outside it, each pixel of a box lies. */
export interface Layers {
  /** The box that was asked for, with the clear pixels round it; beyond the canvas nothing is known. */
  readonly boxPx: RectPx;
  /** 5 deep inside, 4…1 and -1…-4 along the rim, 0 elsewhere. */
  readonly layers: Int8Array;
  /** Pixels of layer 1, those with a softer end too. */
  readonly ends: number;
}

/** By tiles with what lies within reach round them: most of a picture is far from any end. */
export function measureLayers(raster: Raster, contentBoxPx: RectPx): Layers {
  const box = growWithin(raster, contentBoxPx, FAR);
  const layers = new Int8Array(box.width * box.height);
  let ends = 0;
  for (let top = 0; top < box.height; top += TILE)
    for (let left = 0; left < box.width; left += TILE) {
      const size = { width: Math.min(TILE, box.width - left), height: Math.min(TILE, box.height - top) };
      const tile = { x: box.x + left, y: box.y + top, ...size };
      const wide = growWithin(raster, tile, FAR);
      const found = measureTile(raster, wide);
      for (let row = 0; row < tile.height; row += 1) {
        const from = (tile.y - wide.y + row) * wide.width + tile.x - wide.x;
        const own = found.layers.subarray(from, from + tile.width);
        layers.set(own, (top + row) * box.width + left);
        for (let i = from; i < from + tile.width; i += 1) ends += found.isEnd[i]!;
      }
    }
  return { boxPx: box, layers, ends };
}

function measureTile(
  raster: Raster,
  { x, y, width, height }: RectPx,
): { readonly layers: Int8Array; readonly isEnd: Uint8Array } {
  const layers = new Int8Array(width * height);
  const isEnd = new Uint8Array(width * height);
  const scale = fullScaleOf(raster) / 255;
  const evenly = isOpaqueAllOver(raster, { x, y, width, height }, Math.ceil(OPAQUE * scale));
  if (evenly !== null) return { layers: evenly ? layers.fill(REACH + 1) : layers, isEnd };
  const [opaque, open, clear] = [0, 1, 2].map(() => new Uint8Array(width * height)) as [
    Uint8Array,
    Uint8Array,
    Uint8Array,
  ];
  const step = channelsOf(raster);
  for (let row = 0, at = 0; row < height; row += 1) {
    let from = ((y + row) * raster.widthPx + x) * step + step - 1;
    for (let column = 0; column < width; column += 1, at += 1, from += step) {
      const alpha = raster.data[from]! / scale;
      if (alpha >= OPAQUE) opaque[at] = 1;
      else open[at] = 1;
      if (alpha < LEAST_ALPHA) clear[at] = 1;
    }
  }
  const depth = measureNearest(open, width, REACH + 1);
  const outside = measureNearest(opaque, width, REACH + 1);
  const toClear = measureNearest(clear, width, FAR);
  for (let at = 0; at < layers.length; at += 1) {
    if (opaque[at] === 1) {
      const deep = depth[at]!;
      if (deep === 1) isEnd[at] = 1;
      layers[at] = deep > REACH ? REACH + 1 : toClear[at]! - deep <= REACH ? deep : 0;
    } else {
      const far = outside[at]!;
      layers[at] = clear[at] === 1 || far > REACH || far + toClear[at]! > REACH + 1 ? 0 : -far;
    }
  }
  return { layers, isEnd };
}

/** Whether all pixels of a box are opaque, or none is (false); null where some are. */
function isOpaqueAllOver(raster: Raster, { x, y, width, height }: RectPx, least: number): boolean | null {
  const { data, widthPx } = raster;
  const step = channelsOf(raster);
  const isOpaque = data[(y * widthPx + x + 1) * step - 1]! >= least;
  for (let row = y; row < y + height; row += 1) {
    const from = (row * widthPx + x + 1) * step - 1;
    for (let at = from; at < from + width * step; at += step)
      if (data[at]! >= least !== isOpaque) return null;
  }
  return isOpaque;
}

function growWithin({ widthPx, heightPx }: Raster, box: RectPx, by: number): RectPx {
  const [x, y] = [Math.max(0, box.x - by), Math.max(0, box.y - by)];
  return {
    x,
    y,
    width: Math.min(widthPx, box.x + box.width + by) - x,
    height: Math.min(heightPx, box.y + box.height + by) - y,
  };
}
