import { describe, expect, it } from 'vitest';
import { curveTag, parametricTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { xyzToLabD50 } from '../../src/colour/lab.ts';
import { applyMatrix } from '../../src/colour/matrix3.ts';
import { SRGB_TO_XYZ_D50 } from '../../src/colour/srgb.ts';
import type { Triple } from '../../src/colour/triple.ts';
import { fromLabD50, toLabD50 } from '../../src/icc/lab-d50.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { requireWitness } from '../witness.ts';
import { askArgyll, askLcms } from './engines.ts';
import { randomColours } from './random-colours.ts';
import { writeGrayProfile, writeMatrixProfile } from './simple-profiles.ts';
import { TABLE_PROFILES } from './table-profiles.ts';
import { writeTableProfile } from './write-table-profile.ts';

const relative = { intent: 'relative' } as const;
const NAME = 'profile.icc';

const largestStep = (one: readonly number[], other: readonly number[]) =>
  Math.max(...one.map((value, i) => Math.abs(value - other[i]!)));

/** Colours whose XYZ lies within that of white, so that no engine has to clip what comes in. */
const labs: Triple[] = randomColours(9, 60, 3).map(([red = 0, green = 0, blue = 0]) =>
  xyzToLabD50(applyMatrix(SRGB_TO_XYZ_D50, [red, green, blue])),
);

describe.each(TABLE_PROFILES)('$name', (spec) => {
  const bytes = writeTableProfile(spec);
  const files = { [NAME]: bytes };
  const profile = readProfile(bytes);
  const scale = profile.space === 'cmyk' ? 100 : 255;
  const colours = randomColours(8, 60, profile.channels);
  const isLab = profile.connection === 'lab';

  it('is read as it was written', () => {
    expect(profile.description).toBe(spec.name);
    expect(profile.majorVersion).toBe(spec.majorVersion);
  });

  // The nodes lie without order, so that the corners must be the right ones. lcms rounds to 16 bits between the steps,
  // which steep curves multiply; in dark colours of XYZ a count is more of Lab.
  it('leads forwards as in Little CMS', (context) => {
    requireWitness(context, 'transicc');
    const asked = colours.map((colour) => colour.map((value) => value * scale));
    const answers = askLcms({ from: NAME, to: '*Lab2', intent: 'relative', files }, asked);
    for (const [i, colour] of colours.entries())
      expect(largestStep(toLabD50(profile, colour, relative), answers[i]!)).toBeLessThan(isLab ? 0.03 : 0.06);
  });

  // From Lab lcms interpolates trilinearly, so here the nodes lie on a plane, but for their rounding.
  it('leads backwards as in Little CMS', (context) => {
    requireWitness(context, 'transicc');
    const answers = askLcms({ from: '*Lab2', to: NAME, intent: 'relative', files }, labs);
    for (const [i, lab] of labs.entries()) {
      const answer = answers[i]!.map((value) => value / scale);
      expect(largestStep(fromLabD50(profile, lab, relative), answer)).toBeLessThan(0.0001 + spec.offPlane);
    }
  });
});

describe.each(TABLE_PROFILES.filter(({ majorVersion }) => majorVersion === 2))('$name', (spec) => {
  const bytes = writeTableProfile(spec);
  const profile = readProfile(bytes);
  const files = { [NAME]: bytes };

  // Same interpolation; D50 rounded to 16 bits behind the point, six decimals printed.
  it('leads both ways as in Argyll', (context) => {
    requireWitness(context, 'xicclu');
    const colours = randomColours(8, 60, profile.channels);
    const forwards = askArgyll(NAME, 'forwards', 'relative', colours, files);
    for (const [i, colour] of colours.entries())
      expect(largestStep(toLabD50(profile, colour, relative), forwards[i]!)).toBeLessThan(0.001);
    const backwards = askArgyll(NAME, 'backwards', 'relative', labs, files);
    for (const [i, lab] of labs.entries())
      expect(largestStep(fromLabD50(profile, lab, relative), backwards[i]!)).toBeLessThan(0.00001);
  });
});

it('the matrix of a table acts only on XYZ', () => {
  const [spec] = TABLE_PROFILES.filter(({ name }) => name === 'mft2 to XYZ');
  const [plain] = TABLE_PROFILES.filter(({ name }) => name === 'mft2 to Lab');
  const read = (tables: NonNullable<typeof spec>['tables']) =>
    readProfile(writeTableProfile({ ...plain!, tables }));
  for (const lab of labs)
    expect(fromLabD50(read(spec!.tables), lab, relative)).toEqual(
      fromLabD50(read(plain!.tables), lab, relative),
    );
});

const CURVES = {
  'gamma alone': parametricTag(0, [2.2]),
  'with an offset': parametricTag(1, [2.2, 0.9, 0.1]),
  'with an offset, cut below': parametricTag(1, [2.2, 1.2, -0.2]),
  'with a constant': parametricTag(2, [1.6, 0.8, 0.1, 0.05]),
  'with a straight foot': parametricTag(3, [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045]),
  'with a straight foot and constants': parametricTag(4, [2, 0.9, 0.05, 0.4, 0.1, 0.02, 0.005]),
  'a sampled one of two values': curveTag([0, 65535]),
  'a sampled one': curveTag([0, 1000, 5000, 20000, 40000, 65535]),
  'an identity': curveTag([]),
  'a gamma of 8 bits behind the point': curveTag([256 * 1.8]),
};

const CURVE_PROFILES = Object.entries(CURVES).flatMap(([name, curve]) => [
  { name: `${name}, in a matrix profile`, bytes: writeMatrixProfile(curve) },
  { name: `${name}, in a gray profile to XYZ`, bytes: writeGrayProfile(curve, 'XYZ ') },
  { name: `${name}, in a gray profile to Lab`, bytes: writeGrayProfile(curve, 'Lab ') },
]);

describe.each(CURVE_PROFILES)('a curve, $name', ({ bytes }) => {
  const files = { [NAME]: bytes };
  const profile = readProfile(bytes);
  const colours = randomColours(7, 40, profile.channels);
  const seen = colours.map((colour) => toLabD50(profile, colour, relative));

  // lcms keeps a sampled curve in 16 bits; everything else differs in the fourth decimal, which is the last printed.
  it('leads forwards as in Little CMS', (context) => {
    requireWitness(context, 'transicc');
    const asked = colours.map((colour) => colour.map((value) => value * 255));
    const answers = askLcms({ from: NAME, to: '*Lab2', intent: 'relative', files }, asked);
    for (const [i, lab] of seen.entries()) expect(largestStep(lab, answers[i]!)).toBeLessThan(0.01);
  });

  // Compared as colours: where a curve is flat, every device value is right.
  it('leads backwards as in Little CMS', (context) => {
    requireWitness(context, 'transicc');
    const answers = askLcms({ from: '*Lab2', to: NAME, intent: 'relative', files }, seen);
    for (const [i, lab] of seen.entries()) {
      const answer = answers[i]!.map((value) => value / 255);
      expect(largestStep(lab, toLabD50(profile, answer, relative))).toBeLessThan(0.02);
    }
  });

  // Two pieces of a curve meet only to the precision of its constants.
  it('leads back to where it came from', () => {
    for (const lab of seen)
      expect(largestStep(toLabD50(profile, fromLabD50(profile, lab, relative), relative), lab)).toBeLessThan(
        5e-6,
      );
  });
});
