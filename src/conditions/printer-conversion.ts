import type { TransformOptions } from '../icc/adjustment.ts';
import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile, Intent } from '../icc/profile.ts';
import { makeTransform } from '../icc/transform.ts';

/** How a print-ready file is converted for one printer, paper and ink. The profile takes RGB or CMYK, both ways. */
export interface PrinterConversion {
  /** As the profile describes itself, else the name of its file. */
  readonly name: string;
  readonly profile: IccProfile;
  /** The profile's own bytes, which the file carries along. */
  readonly bytes: Uint8Array;
  /** Hex SHA-256 of them. */
  readonly sha256: string;
  readonly intent: Intent;
  readonly blackPointCompensation: boolean;
}

/** How a driver converts that is left to itself (common practice, no source). */
export const DRIVER_CONVERSION: TransformOptions = { intent: 'relative', blackPointCompensation: false };

const made = new WeakMap<PrinterConversion, WeakMap<IccProfile, PixelTransform>>();

/**
 * From a picture's own colours to the printer's in one step, without a stop in sRGB; made once for each pair. White
 * stays bare paper, whatever the profile's table adds to it, except by the absolute intent, which asks for the white
 * of another paper.
 */
export function printerTransform(conversion: PrinterConversion, source: IccProfile): PixelTransform {
  const bySource = made.get(conversion) ?? new WeakMap<IccProfile, PixelTransform>();
  made.set(conversion, bySource);
  const transform = bySource.get(source) ?? make(conversion, source);
  bySource.set(source, transform);
  return transform;
}

function make(conversion: PrinterConversion, source: IccProfile): PixelTransform {
  const transform = makeTransform(source, conversion.profile, conversion).compile();
  return conversion.intent === 'absolute' ? transform : keepPaperBare(transform, conversion.profile);
}

/** The transform itself where its white is bare paper already. */
function keepPaperBare(transform: PixelTransform, { space }: IccProfile): PixelTransform {
  const { inputChannels, outputChannels } = transform;
  const paper = space === 'cmyk' ? 0 : 255;
  const white = new Uint8Array(outputChannels);
  transform.convert8(new Uint8Array(inputChannels).fill(255), white, 1);
  if (white.every((code) => code === paper)) return transform;
  return {
    ...transform,
    convert8(source, target, pixels, sourceStride = inputChannels, targetStride = outputChannels) {
      const bare = findWhite(source, pixels, sourceStride, inputChannels);
      transform.convert8(source, target, pixels, sourceStride, targetStride);
      layBare(target, targetStride, outputChannels, bare, paper);
    },
    convert16(source, target, pixels, sourceStride = inputChannels, targetStride = outputChannels) {
      const bare = findWhite(source, pixels, sourceStride, inputChannels);
      transform.convert16(source, target, pixels, sourceStride, targetStride);
      layBare(target, targetStride, outputChannels, bare, paper * 257);
    },
  };
}

/** 1 for every pixel that is full white. Plain loops: this is done for every pixel of a page. */
function findWhite(
  source: Uint8Array | Uint16Array,
  pixels: number,
  stride: number,
  channels: number,
): Uint8Array {
  const full = source instanceof Uint16Array ? 65535 : 255;
  const white = new Uint8Array(pixels);
  for (let i = 0, s = 0; i < pixels; i++, s += stride) {
    let k = 0;
    while (k < channels && source[s + k] === full) k++;
    if (k === channels) white[i] = 1;
  }
  return white;
}

function layBare(
  target: Uint8Array | Uint16Array,
  stride: number,
  channels: number,
  bare: Uint8Array,
  paper: number,
): void {
  for (let i = 0, t = 0; i < bare.length; i++, t += stride)
    if (bare[i] === 1) for (let k = 0; k < channels; k++) target[t + k] = paper;
}
