import { describe, expect, it } from 'vitest';
import { curveTag } from '../../fixtures/byte-writers/icc-tags.ts';
import type { IccProfile } from '../../src/icc/profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeSrgbTransform } from '../../src/icc/srgb-transform.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { askLcms, requireEngines } from './engines.ts';
import { makeGenerator } from './random-colours.ts';
import { readIfDevice } from './read-if-device.ts';
import { writeGrayProfile, writeMatrixProfile } from './simple-profiles.ts';
import { TABLE_PROFILES } from './table-profiles.ts';
import { writeTableProfile } from './write-table-profile.ts';

const relative = { intent: 'relative', blackPointCompensation: false } as const;
const wide = readProfile(writeMatrixProfile(curveTag([256 * 1.8]), 2));
const gray = readProfile(writeGrayProfile(curveTag([256 * 1.8]), 'XYZ '));
const grayLab = readProfile(writeGrayProfile(curveTag([]), 'Lab '));
const cmyk = readProfile(COATED_REFERENCE);
const tableRgb = readProfile(writeTableProfile(TABLE_PROFILES[0]!));

function randomCodes(count: number, fullScale: 255 | 65535): Uint8Array | Uint16Array {
  const next = makeGenerator(fullScale);
  const codes = fullScale === 255 ? new Uint8Array(count) : new Uint16Array(count);
  for (let i = 0; i < count; i++) codes[i] = (next() >>> 8) % (fullScale + 1);
  return codes;
}

describe.each([
  ['a matrix', wide, 3, 3],
  ['gray', gray, 1, 1],
  ['gray of the Lab kind', grayLab, 1, 1],
  ['a table of RGB', tableRgb, 3, 3],
  ['a table of CMYK', cmyk, 4, 3],
] as const)('%s to sRGB', (_, profile, inputs, outputs) => {
  const transform = makeSrgbTransform(profile);

  it('states its channels', () => {
    expect([transform.inputChannels, transform.outputChannels]).toEqual([inputs, outputs]);
  });

  it('passes over alpha, wherever the strides lead', () => {
    const pixels = 50;
    const codes = randomCodes(pixels * inputs, 255) as Uint8Array;
    const plain = new Uint8Array(pixels * outputs);
    transform.convert8(codes, plain, pixels);
    const withAlpha = new Uint8Array(pixels * (inputs + 1)).fill(9);
    for (let i = 0; i < pixels; i++)
      withAlpha.set(codes.subarray(i * inputs, (i + 1) * inputs), i * (inputs + 1));
    const target = new Uint8Array(pixels * (outputs + 1)).fill(7);
    transform.convert8(withAlpha, target, pixels, inputs + 1, outputs + 1);
    for (let i = 0; i < pixels; i++) {
      const at = i * (outputs + 1);
      expect(target.subarray(at, at + outputs)).toEqual(plain.subarray(i * outputs, (i + 1) * outputs));
      expect(target[at + outputs]).toBe(7);
    }
  });

  it('gives the same in 8 and 16 bits, but for the rounding', () => {
    const codes8 = randomCodes(300 * inputs, 255) as Uint8Array;
    const codes16 = Uint16Array.from(codes8, (code) => code * 257);
    const [target8, target16] = [new Uint8Array(300 * outputs), new Uint16Array(300 * outputs)];
    transform.convert8(codes8, target8, 300);
    transform.convert16(codes16, target16, 300);
    for (const [i, code] of target16.entries()) expect(Math.abs(code / 257 - target8[i]!)).toBeLessThan(0.52);
  });
});

describe.each([
  ['a matrix', wide],
  ['gray', gray],
  ['a table of RGB', tableRgb],
] as const)('%s to sRGB', (_, profile) => {
  it('converts in place', () => {
    const transform = makeSrgbTransform(profile);
    const codes = randomCodes(300, 255) as Uint8Array;
    const target = new Uint8Array(300);
    transform.convert8(codes, target, 300 / profile.channels);
    transform.convert8(codes, codes, 300 / profile.channels);
    expect(codes).toEqual(target);
  });
});

describe('white', () => {
  it.each([
    ['a matrix', wide, 1],
    ['gray', gray, 1],
    ['gray of the Lab kind', grayLab, 1],
    ['bare paper', cmyk, 0],
  ] as const)('of %s is full white, in 8 and 16 bits', (_, profile, level) => {
    const transform = makeSrgbTransform(profile);
    const target8 = new Uint8Array(transform.outputChannels);
    const target16 = new Uint16Array(transform.outputChannels);
    transform.convert8(new Uint8Array(profile.channels).fill(level * 255), target8, 1);
    transform.convert16(new Uint16Array(profile.channels).fill(level * 65535), target16, 1);
    expect([...target8]).toEqual(Array(transform.outputChannels).fill(255));
    // Paper in the reference condition is Lab 100 -0.0002 -0.0002, as its table rounds it.
    for (const code of target16) expect(code).toBeGreaterThanOrEqual(profile === cmyk ? 65534 : 65535);
  });

  it('of a display with another white point is full white all the same', (context) => {
    for (const path of requireEngines(context).filter((name) => /argyll|colord|RGB/.test(name))) {
      const profile = readIfDevice(path);
      if (profile?.space !== 'rgb' || profile.toConnection?.relative.kind !== 'matrix') continue;
      const target = new Uint16Array(3);
      makeSrgbTransform(profile).convert16(new Uint16Array(3).fill(65535), target, 1);
      expect([...target], path).toEqual([65535, 65535, 65535]);
    }
  });
});

describe('pixels against single colours', () => {
  // A matrix is rounded as exact arithmetic rounds: half a code, and what keeping white exact changes. The colorants are
  // stated with 16 bits behind the point, so their sum is up to 3e-5 off white.
  it.each([
    [255, 0.51],
    [65535, 2],
  ] as const)('a matrix, full scale %i', (fullScale, limit) => {
    const { step } = compare(wide, fullScale, 3000);
    expect(step).toBeLessThan(limit);
  });

  function compare(
    profile: IccProfile,
    fullScale: 255 | 65535,
    pixels: number,
  ): { step: number; steps: number[] } {
    const exact = makeTransform(profile, SRGB_PROFILE, relative);
    const codes = randomCodes(pixels * profile.channels, fullScale);
    const target = fullScale === 255 ? new Uint8Array(pixels * 3) : new Uint16Array(pixels * 3);
    const transform = makeSrgbTransform(profile);
    if (codes instanceof Uint8Array && target instanceof Uint8Array)
      transform.convert8(codes, target, pixels);
    if (codes instanceof Uint16Array && target instanceof Uint16Array)
      transform.convert16(codes, target, pixels);
    const steps = Array.from({ length: pixels }, (_, i) => {
      const device = [...codes.subarray(i * profile.channels, (i + 1) * profile.channels)].map(
        (code) => code / fullScale,
      );
      return exact.convert(device).map((value, k) => Math.abs(value * fullScale - target[i * 3 + k]!));
    }).flat();
    return { step: Math.max(...steps), steps };
  }
});

describe('against Little CMS', () => {
  // Its answers are not rounded to codes; 16-bit curves inside it account for 0.02 codes.
  it('RGB profiles give the codes it gives', { timeout: 60_000 }, (context) => {
    const pixels = 200;
    const codes = randomCodes(pixels * 3, 255) as Uint8Array;
    const asked = Array.from({ length: pixels }, (_, i) => [...codes.subarray(3 * i, 3 * i + 3)]);
    for (const path of requireEngines(context)) {
      const profile = readIfDevice(path);
      if (profile?.space !== 'rgb') continue;
      const target = new Uint8Array(pixels * 3);
      makeSrgbTransform(profile).convert8(codes, target, pixels);
      const answers = askLcms({ from: path, to: '*sRGB', intent: 'relative' }, asked);
      for (const [i, code] of target.entries()) {
        const answer = Math.min(255, Math.max(0, answers[Math.floor(i / 3)]![i % 3]!));
        expect(Math.abs(code - answer), path).toBeLessThan(0.55);
      }
    }
  });
});
