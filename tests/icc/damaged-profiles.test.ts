import { describe, expect, it } from 'vitest';
import { curveTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { ascii, wholeNumbers } from '../../fixtures/byte-writers/write-icc.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { altered, refusalOf } from './alter-profile.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { makeGenerator } from './random-colours.ts';
import { writeGrayProfile, writeMatrixProfile } from './simple-profiles.ts';
import { TABLE_PROFILES } from './table-profiles.ts';
import { writeTableProfile } from './write-table-profile.ts';

const SAMPLES: Readonly<Record<string, Uint8Array>> = {
  'a matrix': writeMatrixProfile(curveTag([256 * 2.2]), 2),
  'a gray curve': writeGrayProfile(curveTag([0, 20000, 65535]), 'Lab '),
  ...Object.fromEntries(TABLE_PROFILES.map((spec) => [spec.name, writeTableProfile(spec)])),
};

describe('a profile cut off', () => {
  it.each(Object.entries(SAMPLES))('%s, at every byte', (_, bytes) => {
    expect(refusalOf(bytes)).toBe(null);
    // Behind the header every cut is a profile that states more bytes than there are.
    for (let length = 0; length < bytes.length; length++)
      expect(refusalOf(bytes.subarray(0, length)), `${length} bytes`).toBe(
        length < 40 ? 'profile-malformed' : 'profile-truncated',
      );
  });

  it.each(Object.entries(SAMPLES))('%s, at every byte, with the length set right', (name, bytes) => {
    // Cuts that take nothing but padding, or a tag that has no part in a conversion, leave a whole profile.
    const accepted: number[] = [];
    for (let length = 132; length < bytes.length; length++)
      if (refusalOf(altered(bytes.subarray(0, length), 0, [length])) === null)
        accepted.push(bytes.length - length);
    expect(
      accepted.filter((missing) => missing > 3),
      name,
    ).toEqual([]);
  });

  it('the reference condition, at sampled bytes', () => {
    for (let length = 0; length < COATED_REFERENCE.length; length += 97) {
      expect(refusalOf(COATED_REFERENCE.subarray(0, length))).not.toBe(null);
      if (length >= 132)
        expect(refusalOf(altered(COATED_REFERENCE.subarray(0, length), 0, [length]))).not.toBe(null);
    }
  });
});

describe('something else', () => {
  const random = new Uint8Array(20_000_000);
  const next = makeGenerator(20);
  for (let i = 0; i < random.length; i++) random[i] = next() >>> 24;

  it.each([
    ['nothing', new Uint8Array(0)],
    ['a text', ascii('Dear printer, please find the profile attached. It is in the other mail.')],
    ['a picture', wholeNumbers([0x89504e47, 0x0d0a1a0a, 13, 0x49484452, 1, 1, 0, 0, 0, 0, 0, 0], 4)],
    ['twenty megabytes of noise', random],
    ['zeros', new Uint8Array(500)],
  ])('%s is no profile', (_, bytes) => expect(refusalOf(bytes)).toBe('profile-malformed'));
});

describe('chance', () => {
  // 4000 profiles with up to eight bytes altered, most of them in headers and tables: each is refused or read, and
  // what is read converts. Bounded, since nothing in a profile can ask for more than its bytes hold.
  it('alters bytes, and every profile is refused or can be used', { timeout: 60_000 }, () => {
    const next = makeGenerator(4000);
    const samples = Object.values(SAMPLES);
    const codes = new Map<string | null, number>();
    for (let round = 0; round < 4000; round++) {
      const bytes = samples[round % samples.length]!.slice();
      for (let times = 1 + (next() >>> 29); times > 0; times--) {
        const reach = next() >>> 31 === 0 ? 400 : bytes.length;
        bytes[(next() >>> 8) % Math.min(reach, bytes.length)] = next() >>> 24;
      }
      const code = refusalOf(bytes);
      codes.set(code, (codes.get(code) ?? 0) + 1);
      if (code === null) useProfile(bytes);
    }
    expect([...codes.keys()].sort()).toEqual(
      [
        null,
        'profile-malformed',
        'profile-missing-tag',
        'profile-truncated',
        'profile-unsupported',
        'profile-wrong-class',
      ].sort(),
    );
  });

  /** What is read gives a colour for every device colour, in the form of numbers within the device's range. */
  function useProfile(bytes: Uint8Array): void {
    const profile = readProfile(bytes);
    const options = { intent: 'perceptual', blackPointCompensation: true } as const;
    const transforms = [
      profile.toConnection && makeTransform(profile, SRGB_PROFILE, options),
      profile.fromConnection && makeTransform(SRGB_PROFILE, profile, options),
    ];
    for (const transform of transforms)
      for (const level of transform ? [0, 0.3, 1] : []) {
        const colour = transform!.convert(Array<number>(4).fill(level));
        expect(colour.filter((value) => !(value >= 0 && value <= 1))).toEqual([]);
      }
  }
});
