import { describe, expect, it } from 'vitest';
import {
  curveTag,
  descriptionTag,
  fixedTag,
  textTag,
  translatedTag,
  xyzTag,
} from '../../fixtures/byte-writers/icc-tags.ts';
import { ascii, joinBytes, writeIcc } from '../../fixtures/byte-writers/write-icc.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { COATED_REFERENCE } from './coated-reference.ts';

const curve = curveTag([256 * 2.2]);
const COLORANTS = {
  rXYZ: xyzTag([0.436, 0.2225, 0.0139]),
  gXYZ: xyzTag([0.3851, 0.7169, 0.0971]),
  bXYZ: xyzTag([0.1431, 0.0606, 0.7141]),
};
const MATRIX_TAGS = { ...COLORANTS, rTRC: curve, gTRC: curve, bTRC: curve };

const write = (tags: Readonly<Record<string, Uint8Array>>, profileClass = 'mntr') =>
  writeIcc({
    majorVersion: 2,
    profileClass,
    space: 'RGB ',
    connection: 'XYZ ',
    tags: { ...MATRIX_TAGS, ...tags },
  });

describe('readProfile', () => {
  it('reads the reference condition', () => {
    const profile = readProfile(COATED_REFERENCE);
    expect(profile).toMatchObject({
      version: '2.2',
      majorVersion: 2,
      class: 'output',
      space: 'cmyk',
      channels: 4,
      connection: 'lab',
      description: 'Coated reference (data: ANSI/CGATS/GRACoL TR 006-2007)',
      adaptation: null,
    });
    // One table for the three intents, in either direction.
    expect(profile.toConnection?.perceptual).toBe(profile.toConnection?.relative);
    expect(profile.fromConnection?.saturation).toBe(profile.fromConnection?.relative);
  });

  it.each([
    ['scnr', 'input'],
    ['mntr', 'display'],
    ['prtr', 'output'],
    ['spac', 'colour-space'],
  ] as const)('reads class %s', (signature, name) => {
    expect(readProfile(write({}, signature)).class).toBe(name);
  });

  it('reads white and adaptation, and D50 where no white is stated', () => {
    const adaptation = [1.048, 0.023, -0.05, 0.03, 0.99, -0.017, -0.009, 0.015, 0.752];
    const profile = readProfile(write({ wtpt: xyzTag([0.95, 1, 1.09]), chad: fixedTag(adaptation) }));
    for (const [i, value] of profile.mediaWhiteXyz.entries())
      expect(value).toBeCloseTo([0.95, 1, 1.09][i]!, 4);
    for (const [i, value] of profile.adaptation!.flat().entries())
      expect(value).toBeCloseTo(adaptation[i]!, 4);
    expect(readProfile(write({})).mediaWhiteXyz).toEqual([0.9642, 1, 0.8249]);
  });

  it('reads bytes that lie within a larger buffer, and passes over what follows the profile', () => {
    const bytes = write({});
    const within = joinBytes([ascii('before'), bytes, ascii('behind it')]);
    expect(readProfile(within.subarray(6))).toEqual(readProfile(bytes));
  });

  it('keeps one curve where three tags share their bytes', () => {
    const model = readProfile(write({})).toConnection?.relative;
    if (model?.kind !== 'matrix') throw new Error('expected a matrix');
    expect(model.curves[1]).toBe(model.curves[0]);
  });
});

describe('the description', () => {
  const nameOf = (desc: Uint8Array) => readProfile(write({ desc })).description;

  it.each([
    ['of version 2', descriptionTag('Garden printer'), 'Garden printer'],
    ['as plain text', textTag('Garden printer'), 'Garden printer'],
    ['with one translation', translatedTag({ de: 'Gartendrucker' }), 'Gartendrucker'],
    [
      'with English among them',
      translatedTag({ de: 'Gartendrucker', en: 'Garden printer' }),
      'Garden printer',
    ],
    ['with letters beyond ASCII', translatedTag({ en: 'Gärtnerei 🌱' }), 'Gärtnerei 🌱'],
    ['with half a letter', translatedTag({ en: 'Seed\ud83c' }), 'Seed'],
    ['with control characters', descriptionTag('Garden\u001b[31m\r\nprinter'), 'Garden [31m printer'],
    ['longer than any name', descriptionTag('x'.repeat(5000)), 'x'.repeat(1000)],
    ['of no known type', curveTag([]), ''],
  ])('%s', (_, desc, name) => expect(nameOf(desc)).toBe(name));

  it('is empty when there is none', () => expect(readProfile(write({})).description).toBe(''));
});
