import { oklabToXyzD50, xyzD50ToOklab } from '../colour/oklab.ts';
import { makeBackwardStages } from './backward-stages.ts';
import { convertGrid3 } from './convert-grid3.ts';
import { makeForwardStages, requireForward } from './forward-stages.ts';
import { type GamutTable, UNITS_PER_DELTA_E } from './gamut-table.ts';
import { planGrid } from './grid-plan.ts';
import { findChroma, findHuePlanes } from './hue-planes.ts';
import { makeLinkStages } from './link-stages.ts';
import { once } from './once.ts';
import { makePixelGrid } from './pixel-grid.ts';
import type { IccProfile } from './profile.ts';
import { STAGE_CHANNELS, type Stage } from './stage.ts';

/**
 * Colours are brought this far inside the limit, so that neither the rounding to 8 bits nor the table that judges
 * them puts them over it again. It is also the step at the rim between what stays and what moves: too small to see.
 */
const MARGIN_DELTA_E = 0.5;
/** A colour counts as one of the source's where it comes back from it this near, in Oklab: a tenth of a visible step. */
const SAME_OKLAB = 1e-3;

/** Brings the colours of a source space into what a printing condition can make. */
export interface GamutMap {
  /** One colour, 0…1 each, searched for without a table: the same numbers where it is within the limit. */
  convert(device: readonly number[]): readonly number[];
  /** Pixels of three samples, all over the limit, in place, through a table. */
  map8(pixels8: Uint8Array, pixels: number): void;
  map16(pixels16: Uint16Array, pixels: number): void;
}

/**
 * Keeps the hue in Oklab, in which blues stay blue, and goes to the nearest colour of that hue which the condition
 * makes within the limit of `table`; what is within it stays as it is. null where the source has no way back from
 * colours to its samples.
 * @see CIE 156:2004: clipping to the nearest colour of the same hue (HPMIN dE); here in Oklab, CSS Color 4, 9
 */
export function makeGamutMap(source: IccProfile, table: GamutTable): GamutMap | null {
  if (source.fromConnection === null || source.channels !== 3) return null;
  const toXyz = [...makeForwardStages(source, 'relative'), ...makeLinkStages(source.connection, 'xyz', null)];
  const fromXyz = [
    ...makeLinkStages('xyz', source.connection, null),
    ...makeBackwardStages(source, 'relative', 'clipped'),
  ];
  const values = new Float64Array(STAGE_CHANNELS);
  const device = new Float64Array(STAGE_CHANNELS);
  const wanted = table.limit - MARGIN_DELTA_E;

  const readOklab = (from: ArrayLike<number>) => {
    for (let i = 0; i < 3; i++) values[i] = from[i]!;
    for (const stage of toXyz) stage(values);
    return xyzD50ToOklab([values[0]!, values[1]!, values[2]!]);
  };
  const toDevice = (lightness: number, chroma: number, hue: number): void => {
    device.set(oklabToXyzD50([lightness, chroma * Math.cos(hue), chroma * Math.sin(hue)]));
    for (const stage of fromXyz) stage(device);
  };
  const isPrintable = (lightness: number, chroma: number, hue: number): boolean => {
    toDevice(lightness, chroma, hue);
    const [l, a, b] = readOklab(device);
    const apart = Math.hypot(l - lightness, a - chroma * Math.cos(hue), b - chroma * Math.sin(hue));
    return apart <= SAME_OKLAB && table.measure(device) <= wanted;
  };
  const planes = once(() => findHuePlanes(isPrintable));
  const project = (from: ArrayLike<number>) => {
    const [l, a, b] = readOklab(from);
    const hue = Math.atan2(b, a);
    const [lightness, chroma] = planes().project(l, Math.hypot(a, b), hue);
    return { lightness, chroma, hue };
  };
  const codes = new Uint16Array(3);
  const difference = new Uint16Array(1);
  /** By the table: its nodes are those of the map, and a look at it takes a tenth of the time of a round trip. */
  const isWithin = (colour: Float64Array): boolean => {
    for (let i = 0; i < 3; i++) codes[i] = Math.round(colour[i]! * 65535);
    table.measure16(codes, difference, 1);
    return difference[0]! <= table.limit * UNITS_PER_DELTA_E;
  };
  const tabulate: Stage = (colour) => {
    if (isWithin(colour)) return;
    const { lightness, chroma, hue } = project(colour);
    toDevice(lightness, chroma, hue);
    for (let i = 0; i < 3; i++) colour[i] = device[i]!;
  };
  const plan = once(() => planGrid(requireForward(source, 'relative'), [tabulate], 3, 3));
  const grid8 = once(() => makePixelGrid(plan(), 255));
  const grid16 = once(() => makePixelGrid(plan(), 65535));
  return {
    convert(colour) {
      if (table.measure(colour) <= table.limit) return colour;
      const { lightness, chroma, hue } = project(colour);
      // What lies between the planes can be off by little: then the chroma is searched for anew.
      const holds = (less: number) => isPrintable(lightness, less, hue);
      toDevice(lightness, holds(chroma) ? chroma : findChroma(holds, chroma), hue);
      return [device[0]!, device[1]!, device[2]!];
    },
    map8: (pixels8, pixels) => convertGrid3(pixels8, pixels8, pixels, 3, 3, grid8()),
    map16: (pixels16, pixels) => convertGrid3(pixels16, pixels16, pixels, 3, 3, grid16()),
  };
}
