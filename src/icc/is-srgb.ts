import type { IccProfile } from './profile.ts';
import { makeSrgbTransform } from './srgb-transform.ts';

/** Steps of a channel in the sample; with 33 (a step of 8 codes, 255 last) shadows are well covered. */
const STEPS = 33;
/** Codes of 255 by which a sample may move. Rounded copies of sRGB move none by more than 1. */
const TOLERANCE = 1;

/**
 * True when the profile's matrix and curves are those of sRGB: over a sample of the whole cube no 8-bit code moves by
 * more than one on conversion to sRGB. Its name is not looked at. Profiles with tables are never sRGB.
 * @see IEC 61966-2-1:1999
 */
export function isSrgb(profile: IccProfile): boolean {
  if (profile.toConnection?.relative.kind !== 'matrix') return false;
  const source = sampleCube();
  const target = new Uint8Array(source.length);
  makeSrgbTransform(profile).convert8(source, target, source.length / 3);
  return source.every((code, i) => Math.abs(code - target[i]!) <= TOLERANCE);
}

function sampleCube(): Uint8Array {
  const code = (step: number) => Math.min(255, step * 8);
  const codes = new Uint8Array(3 * STEPS ** 3);
  let i = 0;
  for (let red = 0; red < STEPS; red++)
    for (let green = 0; green < STEPS; green++)
      for (let blue = 0; blue < STEPS; blue++) {
        codes[i++] = code(red);
        codes[i++] = code(green);
        codes[i++] = code(blue);
      }
  return codes;
}
