import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import type { Triple } from '../../src/colour/triple.ts';
import { fromLabD50, toLabD50 } from '../../src/icc/lab-d50.ts';
import type { IccProfile, Intent } from '../../src/icc/profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { askArgyll, askLcms, requireEngines } from './engines.ts';
import { randomColours } from './random-colours.ts';
import { readIfDevice } from './read-if-device.ts';

const INTENTS: readonly Intent[] = ['perceptual', 'relative', 'saturation', 'absolute'];
const COLOURS = 40;

/** Seeded colours of the profile's device space, in its own units. */
function deviceColours({ space, channels }: IccProfile): number[][] {
  const colours = randomColours(4, COLOURS, channels);
  if (space === 'lab') return colours.map(([l = 0, a = 0, b = 0]) => [l * 100, a * 200 - 100, b * 200 - 100]);
  if (space === 'xyz') return colours.map(([x = 0, y = 0, z = 0]) => [x * 0.9642, y, z * 0.8249]);
  return colours;
}

/** The scale in which transicc takes and gives device values. */
const lcmsScale = ({ space }: IccProfile) =>
  space === 'lab' ? 1 : space === 'xyz' || space === 'cmyk' ? 100 : 255;

const tripleOf = ([l = 0, a = 0, b = 0]: readonly number[]): Triple => [l, a, b];

const largestStep = (one: readonly number[], other: readonly number[]) =>
  Math.max(...one.map((value, i) => Math.abs(value - other[i]!)));

interface Read {
  readonly path: string;
  readonly profile: IccProfile;
}

function readAll(paths: readonly string[]): Read[] {
  return paths.flatMap((path) => {
    const profile = readIfDevice(path);
    return profile ? [{ path, profile }] : [];
  });
}

describe('the profiles of icc-profiles-free, colord-data and argyll-ref', { timeout: 60_000 }, () => {
  it('are read, except for the classes that have no device side', (context) => {
    const refused = requireEngines(context).flatMap((path) => {
      try {
        readProfile(readFileSync(path));
        return [];
      } catch (error) {
        return [[basename(path), error instanceof BlankcheckError ? error.code : String(error)]];
      }
    });
    expect(refused).toEqual([
      ['CineLogCurve.icc', 'profile-wrong-class'],
      ['Crayons.icc', 'profile-wrong-class'],
      ['x11-colors.icc', 'profile-wrong-class'],
    ]);
  });

  // lcms keeps sampled curves and tables in 16 bits between its steps: up to 0.013 units of Lab with curves, and 0.033
  // where a table of XYZ meets dark colours. *Lab2, because towards *Lab, which is version 4, lcms compensates black
  // with the perceptual intent whether asked or not.
  it('give the Lab that Little CMS gives, with all intents', (context) => {
    for (const { path, profile } of readAll(requireEngines(context)))
      for (const intent of INTENTS) {
        const colours = deviceColours(profile);
        const scale = lcmsScale(profile);
        const question = { from: path, to: '*Lab2', intent };
        const answers = askLcms(
          question,
          colours.map((colour) => colour.map((value) => value * scale)),
        );
        const limit = profile.space === 'xyz' ? 0.04 : 0.02;
        for (const [i, colour] of colours.entries())
          expect(
            largestStep(toLabD50(profile, colour, { intent }), answers[i]!),
            `${path} ${intent}`,
          ).toBeLessThan(limit);
      }
  });

  // Argyll takes D50 as rounded to 16 bits behind the point (0.964203 1 0.824905): 0.0005 units of Lab. In absolute
  // colorimetric it goes its own way (private tag, cone space).
  it('give the Lab that Argyll gives, where it reads them (version 2)', (context) => {
    for (const { path, profile } of readAll(requireEngines(context))) {
      if (profile.majorVersion !== 2) continue;
      const colours = deviceColours(profile);
      const answers = askArgyll(path, 'forwards', 'relative', colours);
      // A table of XYZ is 16 bits of twice the range of white: dark colours differ by what one count is.
      const limit = profile.space === 'xyz' ? 0.02 : 0.001;
      for (const [i, colour] of colours.entries())
        expect(
          largestStep(toLabD50(profile, colour, { intent: 'relative' }), answers[i]!),
          path,
        ).toBeLessThan(limit);
    }
  });

  // Compared as colours, since a flat stretch of a curve leaves device values open. Lab is printed with four decimals,
  // device values with four; steep curves near black and 16-bit curves in lcms do the rest.
  it('give the device values that both give for a colour, as far as they can be seen', (context) => {
    const relative = { intent: 'relative' } as const;
    for (const { path, profile } of readAll(requireEngines(context))) {
      if (!profile.fromConnection) continue;
      const labs = deviceColours(profile).map((colour) => toLabD50(profile, colour, relative));
      const scale = lcmsScale(profile);
      const own = labs.map((lab) => fromLabD50(profile, lab, relative));
      const lcms = askLcms({ from: '*Lab2', to: path, intent: 'relative' }, labs);
      const others = [lcms.map((device) => device.map((value) => value / scale))];
      // Argyll gives 50 or 0 for a gray of L* 50: it does not invert gray profiles.
      if (profile.majorVersion === 2 && profile.space !== 'gray')
        others.push(askArgyll(path, 'backwards', 'relative', labs));
      for (const other of others)
        for (const [i, device] of own.entries()) {
          const seen = [device, other[i]!].map((colour) => tripleOf(toLabD50(profile, colour, relative)));
          expect(deltaE2000(seen[0]!, seen[1]!), path).toBeLessThan(0.02);
        }
    }
  });
});
