import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { curveTag, parametricTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { isSrgb } from '../../src/icc/is-srgb.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { requireEngines } from './engines.ts';
import { readIfDevice } from './read-if-device.ts';
import { writeGrayProfile, writeMatrixProfile } from './simple-profiles.ts';
import { TABLE_PROFILES } from './table-profiles.ts';
import { writeTableProfile } from './write-table-profile.ts';

const srgbCurve = parametricTag(3, [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045]);
const cmyk = readProfile(COATED_REFERENCE);
const tableRgb = readProfile(writeTableProfile(TABLE_PROFILES[0]!));

describe('isSrgb', () => {
  it('knows sRGB by what it does', () => {
    expect(isSrgb(SRGB_PROFILE)).toBe(true);
    expect(isSrgb(readProfile(writeMatrixProfile(srgbCurve)))).toBe(true);
  });

  it('is not taken in by primaries with another curve, tables, gray or ink', () => {
    expect(isSrgb(readProfile(writeMatrixProfile(curveTag([256 * 2.2]))))).toBe(false);
    expect(isSrgb(tableRgb)).toBe(false);
    expect(isSrgb(readProfile(writeGrayProfile(srgbCurve, 'XYZ ')))).toBe(false);
    expect(isSrgb(cmyk)).toBe(false);
  });

  // Bluish and the three Gamma profiles are sRGB with a calibration of the graphics card beside it.
  it('finds it among the profiles of Debian', (context) => {
    const found = requireEngines(context).filter((path) => {
      const profile = readIfDevice(path);
      return profile !== null && isSrgb(profile);
    });
    expect(found.map((path) => basename(path)).sort()).toEqual(
      [
        'Bluish.icc',
        'Gamma5000K.icc',
        'Gamma5500K.icc',
        'Gamma6500K.icc',
        'sRGB.icc',
        'sRGB.icc',
        'sRGB.icm',
      ].sort(),
    );
  });
});
