import { describe, expect, it } from 'vitest';
import { curveTag, fixedTag, lutABTag, lutTag, xyzTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { ascii, type ProfileSpec, writeIcc } from '../../fixtures/byte-writers/write-icc.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { makeSrgbTransform } from '../../src/icc/srgb-transform.ts';
import { altered, entryOf, refusalOf, tagOffset } from './alter-profile.ts';
import { writeMatrixProfile } from './simple-profiles.ts';
import { TABLE_PROFILES } from './table-profiles.ts';

const MATRIX_PROFILE = writeMatrixProfile(curveTag([256 * 2.2]), 2);

const profileOf = (space: string, tags: ProfileSpec['tags'], connection = 'XYZ ') =>
  writeIcc({ majorVersion: 4, profileClass: 'prtr', space, connection, tags });

describe('a header that lies', () => {
  it.each([
    ['a length of nothing', altered(MATRIX_PROFILE, 0, [0]), 'profile-malformed'],
    ['a length of a header alone', altered(MATRIX_PROFILE, 0, [128]), 'profile-malformed'],
    ['a length beyond the bytes', altered(MATRIX_PROFILE, 0, [0xffffffff]), 'profile-truncated'],
    ['no signature', altered(MATRIX_PROFILE, 36, [0]), 'profile-malformed'],
    ['version 5', altered(MATRIX_PROFILE, 8, [5], 1), 'profile-unsupported'],
    ['version 0', altered(MATRIX_PROFILE, 8, [0], 1), 'profile-unsupported'],
    ['a device link', withText(12, 'link'), 'profile-wrong-class'],
    ['an abstract profile', withText(12, 'abst'), 'profile-wrong-class'],
    ['named colours', withText(12, 'nmcl'), 'profile-wrong-class'],
    ['a class nobody knows', withText(12, 'wxyz'), 'profile-wrong-class'],
    ['a class that is a word of the language', withText(12, '__pr'), 'profile-wrong-class'],
    ['a space nobody knows', withText(16, 'ABCD'), 'profile-unsupported'],
    ['a connection space that is none', withText(20, 'Luv '), 'profile-unsupported'],
  ] as const)('%s', (_, bytes, code) => expect(refusalOf(bytes)).toBe(code));

  function withText(offset: number, text: string): Uint8Array {
    return altered(MATRIX_PROFILE, offset, [...ascii(text)], 1);
  }
});

describe('a tag table that lies', () => {
  const at = (name: string) => entryOf(MATRIX_PROFILE, name);
  it.each([
    ['no tags', altered(MATRIX_PROFILE, 128, [0]), 'profile-missing-tag'],
    ['more tags than bytes', altered(MATRIX_PROFILE, 128, [100_000]), 'profile-malformed'],
    ['four thousand million tags', altered(MATRIX_PROFILE, 128, [0xffffffff]), 'profile-malformed'],
    ['an offset beyond the end', altered(MATRIX_PROFILE, at('rTRC') + 4, [0x7fffffff]), 'profile-malformed'],
    [
      'an offset and a length that wrap around',
      altered(MATRIX_PROFILE, at('rTRC') + 4, [0xffffffff, 0xffffffff]),
      'profile-malformed',
    ],
    ['an offset into the header', altered(MATRIX_PROFILE, at('rTRC') + 4, [12]), 'profile-malformed'],
    ['a length beyond the end', altered(MATRIX_PROFILE, at('bXYZ') + 8, [0xffffff]), 'profile-malformed'],
    ['a length of nothing', altered(MATRIX_PROFILE, at('bXYZ') + 8, [0]), 'profile-malformed'],
    ['the same tag twice', altered(MATRIX_PROFILE, at('gXYZ'), [0x7258595a]), 'profile-malformed'],
    [
      'a tag inside another',
      altered(MATRIX_PROFILE, at('gXYZ') + 4, [tagOffset(MATRIX_PROFILE, 'rXYZ') + 4]),
      'profile-malformed',
    ],
    ['a colorant renamed', altered(MATRIX_PROFILE, at('gXYZ'), [0x61616161]), 'profile-missing-tag'],
    ['a curve renamed', altered(MATRIX_PROFILE, at('bTRC'), [0x61616161]), 'profile-missing-tag'],
  ] as const)('%s', (_, bytes, code) => expect(refusalOf(bytes)).toBe(code));
});

describe('a tag that lies', () => {
  const inMatrix = (name: string, offset: number, numbers: readonly number[], size: 1 | 2 | 4 = 4) =>
    altered(MATRIX_PROFILE, tagOffset(MATRIX_PROFILE, name) + offset, numbers, size);
  it.each([
    ['a curve of another type', inMatrix('rTRC', 0, [0x74657874]), 'profile-malformed'],
    ['a curve with more values than bytes', inMatrix('rTRC', 8, [2]), 'profile-malformed'],
    ['a curve with four thousand million values', inMatrix('rTRC', 8, [0xffffffff]), 'profile-malformed'],
    ['a white of another type', inMatrix('wtpt', 0, [0x74657874]), 'profile-malformed'],
    ['a black white', inMatrix('wtpt', 8, [0, 0, 0]), 'profile-malformed'],
    ['equal colorants', withColorants([0.3, 0.3, 0.3]), 'profile-malformed'],
  ] as const)('%s', (_, bytes, code) => expect(refusalOf(bytes)).toBe(code));

  function withColorants(xyz: readonly number[]): Uint8Array {
    const tag = xyzTag(xyz);
    const curve = curveTag([]);
    return profileOf('RGB ', { rXYZ: tag, gXYZ: tag, bXYZ: tag, rTRC: curve, gTRC: curve, bTRC: curve });
  }
});

const line = (full: number, entries: number) =>
  Array.from({ length: entries }, (_, i) => Math.round((i * full) / (entries - 1)));

describe('a table that lies', () => {
  const lut = lutTag('mft2', {
    inputs: 3,
    outputs: 3,
    size: 2,
    inputCurves: [line(65535, 2), line(65535, 2), line(65535, 2)],
    nodes: new Uint16Array(24),
    outputCurves: [line(65535, 2), line(65535, 2), line(65535, 2)],
  });
  const ab = lutABTag('mAB ', {
    inputs: 3,
    outputs: 3,
    a: [curveTag([]), curveTag([]), curveTag([])],
    grid: { sizes: [2, 2, 2], bytes: 1, nodes: new Uint8Array(24) },
    b: [curveTag([]), curveTag([]), curveTag([])],
  });
  const inLut = (offset: number, numbers: readonly number[], size: 1 | 2 | 4) =>
    profileOf('RGB ', { A2B0: altered(lut, offset, numbers, size) }, 'Lab ');
  const inAB = (offset: number, numbers: readonly number[], size: 1 | 2 | 4 = 4) =>
    profileOf('RGB ', { A2B0: altered(ab, offset, numbers, size) }, 'Lab ');
  const abWithoutA = lutABTag('mAB ', {
    inputs: 3,
    outputs: 3,
    grid: { sizes: [2, 2, 2], bytes: 1, nodes: new Uint8Array(24) },
    b: [curveTag([]), curveTag([]), curveTag([])],
  });
  const gridOffset = new DataView(ab.buffer).getUint32(24);

  it('is read when it does not', () => {
    expect(refusalOf(inLut(11, [0], 1))).toBe(null);
    expect(refusalOf(inAB(10, [0], 1))).toBe(null);
  });

  it.each([
    ['no nodes', inLut(10, [0], 1), 'profile-malformed'],
    ['one node', inLut(10, [1], 1), 'profile-malformed'],
    ['255 nodes', inLut(10, [255], 1), 'profile-malformed'],
    ['no inputs', inLut(8, [0], 1), 'profile-malformed'],
    ['255 inputs and outputs', inLut(8, [255, 255], 1), 'profile-malformed'],
    ['other channels than the space has', inLut(8, [1], 1), 'profile-malformed'],
    ['a curve of one entry', inLut(48, [1], 2), 'profile-malformed'],
    ['a curve of 65535 entries', inLut(50, [65535], 2), 'profile-malformed'],
    ['a type of the other direction', inAB(0, [0x6d424120]), 'profile-malformed'],
    ['a type that is no table', inAB(0, [0x74657874]), 'profile-malformed'],
    ['no B curves', inAB(12, [0]), 'profile-malformed'],
    ['B curves beyond the end', inAB(12, [0xfffffff0]), 'profile-malformed'],
    ['a matrix beyond the end', inAB(16, [0xfffffff0]), 'profile-malformed'],
    ['M curves beyond the end', inAB(20, [ab.length - 4]), 'profile-malformed'],
    ['a grid beyond the end', inAB(24, [ab.length - 8]), 'profile-malformed'],
    ['a grid without nodes', inAB(gridOffset, [0], 1), 'profile-malformed'],
    ['a grid of 255 nodes each way', inAB(gridOffset, [255, 255, 255], 1), 'profile-malformed'],
    ['a grid of three bytes a value', inAB(gridOffset + 16, [3], 1), 'profile-malformed'],
    [
      'a grid of two bytes a value, half of them there',
      profileOf('RGB ', { A2B0: altered(abWithoutA, gridOffset + 16, [2], 1) }, 'Lab '),
      'profile-malformed',
    ],
    ['a table from nothing to ink', profileOf('CMYK', { A2B0: inCmyk() }, 'Lab '), 'profile-malformed'],
    [
      'an adaptation that flattens',
      profileOf('RGB ', { A2B0: ab, chad: fixedTag(Array(9).fill(0)) }, 'Lab '),
      'profile-malformed',
    ],
  ] as const)('%s', (_, bytes, code) => expect(refusalOf(bytes)).toBe(code));

  /** No grid, four channels in and three out. */
  function inCmyk(): Uint8Array {
    return lutABTag('mAB ', { inputs: 4, outputs: 3, b: [curveTag([]), curveTag([]), curveTag([])] });
  }
});

describe('a profile without the direction that is needed', () => {
  it('is read, and refused when it is used', () => {
    const { tables } = TABLE_PROFILES[0]!;
    const backwardsOnly = readProfile(profileOf('RGB ', { B2A0: tables.B2A }, 'Lab '));
    expect(backwardsOnly.toConnection).toBe(null);
    expect(() => makeSrgbTransform(backwardsOnly)).toThrow(
      expect.objectContaining({ code: 'profile-missing-tag' }),
    );
  });
});
