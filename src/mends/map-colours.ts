import type { GamutMap } from '../icc/gamut-map.ts';
import { type GamutTable, UNITS_PER_DELTA_E } from '../icc/gamut-table.ts';
import { bandsOverWhite } from '../raster/bands-over-white.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** One pass through the table brings all but a few of a thousand inside; those few are mapped again. */
const PASSES = 3;
/** Shares of a colour's distance from gray that are tried where neither table nor search helps. */
const TOWARDS_GRAY = [0.75, 0.5, 0.25, 0];

type Samples = Uint8Array | Uint16Array;

/**
 * Brings every visible pixel that is over the table's limit inside it, as it is printed: over white where its alpha is
 * partial. Alpha and all other pixels keep their numbers; a pixel that nothing brings inside keeps its own too, so
 * that what has been mapped is not changed again. The very same raster where none is over.
 */
export function mapColours(raster: Raster, table: GamutTable, map: GamutMap): Raster {
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const limit = table.limit * UNITS_PER_DELTA_E;
  const kept = new Map<number, readonly number[]>();
  let data: Samples | null = null;
  for (const { colours, visible, firstPixel, pixels } of bandsOverWhite(raster)) {
    const over = listOver(colours, pixels, visible);
    if (over.length === 0) continue;
    data ??= raster.data.slice();
    const mapped = gather(colours, over);
    mapInside(mapped);
    for (let i = 0; i < over.length; i++) {
      const at = (firstPixel + over[i]!) * channels;
      const alpha = raster.hasAlpha ? raster.data[at + 3]! : full;
      if (alpha === full) copyColour(mapped, 3 * i, data, at);
      else unmix(data, at, alpha, mapped.subarray(3 * i, 3 * i + 3));
    }
  }
  return data === null ? raster : { ...raster, data };

  function measure(colours: Samples, pixels: number): Uint16Array {
    const differences = new Uint16Array(pixels);
    if (colours instanceof Uint16Array) table.measure16(colours, differences, pixels);
    else table.measure8(colours, differences, pixels);
    return differences;
  }

  function listOver(colours: Samples, pixels: number, visible?: Uint8Array): Uint32Array {
    const differences = measure(colours, pixels);
    const found = new Uint32Array(pixels);
    let count = 0;
    for (let i = 0; i < pixels; i++)
      if (differences[i]! > limit && (visible === undefined || visible[i] === 1)) found[count++] = i;
    return found.subarray(0, count);
  }

  function mapByTable(colours: Samples): void {
    if (colours instanceof Uint16Array) map.map16(colours, colours.length / 3);
    else map.map8(colours, colours.length / 3);
  }

  /** Colours that are all over the limit, in place. */
  function mapInside(colours: Samples): void {
    const original = colours.slice();
    mapByTable(colours);
    let places = listOver(colours, colours.length / 3);
    for (let pass = 1; pass < PASSES && places.length > 0; pass++) {
      const left = gather(colours, places);
      mapByTable(left);
      for (let i = 0; i < places.length; i++) copyColour(left, 3 * i, colours, 3 * places[i]!);
      const before = places;
      places = listOver(left, before.length);
      for (let i = 0; i < places.length; i++) places[i] = before[places[i]!]!;
    }
    for (const place of places) {
      const own = original.subarray(3 * place, 3 * place + 3);
      colours.set(search(own) ?? own, 3 * place);
    }
  }

  /** The few that the table leaves over, each colour once. */
  function search(own: Samples): readonly number[] | null {
    const key = (own[0]! * 65536 + own[1]!) * 65536 + own[2]!;
    const known = kept.get(key);
    if (known) return known;
    const device = map.convert(Array.from(own, (sample) => sample / full));
    const near = device.map((value) => Math.round(Math.min(1, Math.max(0, value)) * full));
    const found = isOver(near) ? fade(near, (colour) => colour) : near;
    if (found !== null) kept.set(key, found);
    return found;
  }

  function isOver(colour: readonly number[]): boolean {
    return measure(full === 255 ? Uint8Array.from(colour) : Uint16Array.from(colour), 1)[0]! > limit;
  }

  /** Towards the gray of its own mean, as far as it takes; null where not even gray is inside. */
  function fade(colour: readonly number[], asPrinted: (colour: readonly number[]) => readonly number[]) {
    const gray = (colour[0]! + colour[1]! + colour[2]!) / 3;
    for (const share of TOWARDS_GRAY) {
      const faded = colour.map((sample) => Math.round(gray + (sample - gray) * share));
      if (!isOver(asPrinted(faded))) return faded;
    }
    return null;
  }

  /** The colour that gives `printed` over white at this alpha; where there is none, the nearest that is inside. */
  function unmix(target: Samples, at: number, alpha: number, printed: Samples): void {
    const clear = full - alpha;
    const overWhite = (colour: readonly number[]) =>
      colour.map((sample) => Math.floor((sample * alpha + clear * full) / full + 0.5));
    const thin = Array.from(printed, (sample) =>
      Math.min(full, Math.max(0, Math.round(((sample - clear) * full) / alpha))),
    );
    const found = isOver(overWhite(thin)) ? fade(thin, overWhite) : thin;
    if (found !== null) target.set(found, at);
  }
}

function gather(colours: Samples, places: Uint32Array): Samples {
  const gathered = colours.slice(0, places.length * 3);
  for (let i = 0; i < places.length; i++) copyColour(colours, 3 * places[i]!, gathered, 3 * i);
  return gathered;
}

/** Three numbers: a part of an array would be made for each pixel otherwise. */
function copyColour(source: Samples, from: number, target: Samples, to: number): void {
  target[to] = source[from]!;
  target[to + 1] = source[from + 1]!;
  target[to + 2] = source[from + 2]!;
}
