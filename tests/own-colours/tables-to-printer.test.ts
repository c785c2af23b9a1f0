import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import type { IccProfile } from '../../src/icc/profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { WIDE_PROFILE } from '../../src/icc/wide-profile.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { askLcms } from '../icc/engines.ts';
import { randomColours } from '../icc/random-colours.ts';
import { requireWitness } from '../witness.ts';
import { CASES } from './cases.ts';
import { cmykArt, coloursOf, exactly, lossesOf, type Prepared, prepare, summary, WAY } from './jobs.ts';

/** What one stop in sRGB, which clips, would cost on average, by exact evaluation. */
function byWayOfSrgb(source: IccProfile, made: Prepared, colours: readonly (readonly number[])[]): number {
  const { profile } = made.conversion;
  const print = (device: readonly number[]) => toLabD50(profile, device, { intent: 'relative' });
  const toSrgb = makeTransform(source, SRGB_PROFILE, WAY);
  const wanted = exactly(source, made, colours);
  const clipped = exactly(
    SRGB_PROFILE,
    made,
    colours.map((colour) => toSrgb.convert(colour)),
  );
  return summary(wanted.map((device, i) => deltaE2000(print(device), print(clipped[i]!)))).mean;
}

describe('art in a space of tables reaches the printer in one conversion, unclipped', () => {
  it.each(CASES)('%s, against exact evaluation', async (_, art, own, codes, channels, printer) => {
    const made = await prepare(art, printer);
    const source = readProfile(own);
    const { mean, p95 } = summary(lossesOf(made, exactly(source, made, coloursOf(codes, channels))));
    expect(mean).toBeLessThan(0.8);
    expect(p95).toBeLessThan(2.5);
    expect(made.report.plan.some(({ step }) => step === 'convert')).toBe(false);
  });

  it.for(CASES)('%s, against Little CMS', async ([, art, own, codes, channels, printer], context) => {
    requireWitness(context, 'transicc');
    const made = await prepare(art, printer);
    const scale = channels === 4 ? 100 : 255;
    const theirs = askLcms(
      { from: 'own.icc', to: 'printer.icc', ...WAY, files: { 'own.icc': own, 'printer.icc': printer } },
      coloursOf(codes, channels).map((colour) => colour.map((value) => value * scale)),
    );
    const full = made.conversion.profile.space === 'cmyk' ? 100 : 255;
    const { mean, p95 } = summary(
      lossesOf(
        made,
        theirs.map((colour) => colour.map((value) => value / full)),
      ),
    );
    expect(mean).toBeLessThan(1);
    expect(p95).toBeLessThan(3);
  });

  it('would be seen if it went by way of sRGB, which clips', async () => {
    const [, art, own, codes, channels, printer] = CASES[2];
    const made = await prepare(art, printer);
    expect(byWayOfSrgb(readProfile(own), made, coloursOf(codes, channels))).toBeGreaterThan(5);
  });

  it('is within the working space: no ink of the reference lies outside it', () => {
    const press = readProfile(COATED_REFERENCE);
    const back = makeTransform(WIDE_PROFILE, WIDE_PROFILE, WAY);
    const into = makeTransform(press, WIDE_PROFILE, WAY);
    for (const inks of randomColours(5, 500, 4)) {
      const wide = into.convert(inks.map(Math.round));
      expect(Math.max(...wide)).toBeLessThanOrEqual(1);
      expect(back.convert(wide)).toEqual(wide.map((value) => expect.closeTo(value, 6)));
    }
  });

  it('is not clipped before it is judged: the reference can print its own inks', async () => {
    const { report } = await prepare(cmykArt(), COATED_REFERENCE);
    const gamut = report.outcomes.find(({ check }) => check === 'gamut')!;
    expect(gamut.status).toBe('passed');
  });
});
