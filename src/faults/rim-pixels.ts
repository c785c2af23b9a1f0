import type { RectPx } from '../geometry/rectangle.ts';
import { type BoxPixels, pixelInRaster, pixelsOfBox } from '../raster/box-pixels.ts';
import type { Raster } from '../raster/raster.ts';
import { measureLayers, REACH } from './rim-layers.ts';

/** One pixel of the rim, and what lies within. */
export interface RimPixel {
  /** In the whole raster, rows from the top. */
  readonly pixel: number;
  /** 1 to 4: so deep in the opaque art; -1 to -4: so far outside it. */
  readonly layer: number;
  /** 0 to 1. */
  readonly alpha: number;
  /** 0 to 1 each; gray three times. */
  readonly colour: Rgb;
  /** The colour of the art behind the rim at this place. */
  readonly within: Rgb;
}

export type Rgb = readonly [number, number, number];

export interface Rim {
  /** Innermost first. */
  readonly pixels: readonly RimPixel[];
  /** Pixels in which opaque art ends, those with a softer end too. */
  readonly ends: number;
}

/**
 * The pixels within 4 of where opaque art ends at clear canvas, each with the colour that the art has behind them, at a
 * depth of 5 pixels. Left out is what has nothing behind it (strokes under 9 pixels) and where the end is softer, as
 * at glows and shadows. Empty for pictures without alpha and in inks.
 */
export function listRim(raster: Raster, contentBoxPx: RectPx): Rim {
  if (!raster.hasAlpha || raster.model === 'cmyk') return { pixels: [], ends: 0 };
  const { boxPx, layers, ends } = measureLayers(raster, contentBoxPx);
  const places = placesByLayer(layers);
  if (ends === 0) return { pixels: [], ends };
  const rim = new RimList(pixelsOfBox(raster, boxPx), layers, places);
  for (const layer of [4, 3, 2, 1, -1, -2, -3, -4]) {
    const own = places.get(layer)!;
    // What juts out touches no deeper layer, but others of its own.
    const jutting = own.filter((at) => !rim.add(at, layer, layer === -1 ? 1 : layer + 1));
    for (const at of jutting) rim.add(at, layer, layer);
  }
  return { pixels: rim.pixels, ends };
}

class RimList {
  readonly pixels: RimPixel[] = [];
  readonly #source: BoxPixels;
  readonly #layers: Int8Array;
  /** Of each place, where its pixel stands in the list; -1 where it does not. */
  readonly #slots: Int32Array;
  /** Three numbers a slot: lists in objects would be made and thrown away for each neighbour of each pixel. */
  readonly #within: Float64Array;

  constructor(source: BoxPixels, layers: Int8Array, places: PlacesByLayer) {
    this.#source = source;
    this.#layers = layers;
    this.#slots = new Int32Array(layers.length).fill(-1);
    this.#within = new Float64Array(3 * [...places.values()].reduce((sum, own) => sum + own.length, 0));
  }

  /** Adds a pixel with the mean of what its neighbours in a layer have behind them; false where they have nothing. */
  add(at: number, layer: number, from: number): boolean {
    const slot = this.pixels.length;
    const count = this.#sumNeighbours(at, from, 3 * slot);
    if (count === 0) return false;
    this.#slots[at] = slot;
    const within = this.#within;
    for (let k = 3 * slot; k < 3 * slot + 3; k += 1) within[k]! /= count;
    const own = [within[3 * slot]!, within[3 * slot + 1]!, within[3 * slot + 2]!] as const;
    this.pixels.push({ ...readPixel(this.#source, at), layer, within: own });
    return true;
  }

  /** Sums up in `within`, from `to` on, what lies behind the neighbours of a layer; returns how many of them have something. */
  #sumNeighbours(at: number, from: number, to: number): number {
    const { width, height } = this.#source.boxPx;
    const [layers, slots, within] = [this.#layers, this.#slots, this.#within];
    let count = 0;
    within.fill(0, to, to + 3);
    const [x, y] = [at % width, Math.floor(at / width)];
    for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row += 1)
      for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column += 1) {
        const next = row * width + column;
        if (layers[next] !== from) continue;
        const slot = slots[next]!;
        if (from > REACH) addColour(this.#source, next, within, to);
        else if (slot < 0) continue;
        else for (let k = 0; k < 3; k += 1) within[to + k]! += within[3 * slot + k]!;
        count += 1;
      }
    return count;
  }
}

type PlacesByLayer = ReadonlyMap<number, readonly number[]>;

function placesByLayer(layers: Int8Array): PlacesByLayer {
  const places = new Map<number, number[]>();
  for (let layer = -REACH; layer <= REACH; layer += 1) places.set(layer, []);
  for (let at = 0; at < layers.length; at += 1) {
    const layer = layers[at]!;
    if (layer !== 0 && layer <= REACH) places.get(layer)!.push(at);
  }
  return places;
}

function readPixel(source: BoxPixels, at: number): Pick<RimPixel, 'pixel' | 'alpha' | 'colour'> {
  const { data, step, full, green, blue } = source;
  const pixel = pixelInRaster(source, at);
  const from = pixel * step;
  return {
    pixel,
    alpha: data[from + step - 1]! / full,
    colour: [data[from]! / full, data[from + green]! / full, data[from + blue]! / full],
  };
}

/** Adds the colour of a pixel, 0 to 1 each, to three numbers of a list. */
function addColour(source: BoxPixels, at: number, sums: Float64Array, to: number): void {
  const { data, step, full, green, blue } = source;
  const from = pixelInRaster(source, at) * step;
  sums[to]! += data[from]! / full;
  sums[to + 1]! += data[from + green]! / full;
  sums[to + 2]! += data[from + blue]! / full;
}
