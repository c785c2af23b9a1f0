import { decodeSrgb, encodeSrgb } from '../colour/srgb.ts';
import type { InkColour } from '../geometry/drawing.ts';

/** From a sample of the print on white, 0…65535, to the sample on a base of another colour, 0…255. */
export type DyeOnBase = readonly [Uint8Array, Uint8Array, Uint8Array];

/**
 * What a base colour leaves of light that passed through dye: dye takes light away and adds none, so the two multiply
 * in linear light, channel by channel (derived; exact for dyes and bases whose spectra are flat within a channel).
 */
export function tabulateDyeOnBase({ r, g, b }: InkColour): DyeOnBase {
  return [tabulate(r), tabulate(g), tabulate(b)];
}

function tabulate(baseCode: number): Uint8Array {
  const base = decodeSrgb(baseCode / 255);
  return Uint8Array.from({ length: 65536 }, (_, sample) =>
    Math.round(encodeSrgb(base * decodeSrgb(sample / 65535)) * 255),
  );
}
