import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { findSourceBlack } from '../../src/icc/black-point.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { WIDE_PROFILE } from '../../src/icc/wide-profile.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { askArgyll, askLcms } from '../icc/engines.ts';
import { requireWitness } from '../witness.ts';
import { cmykArt, coloursOf, exactly, INKS, lossesOf, PRESS, prepare, WAY } from './jobs.ts';

const press = readProfile(PRESS);
const inks = coloursOf(INKS, 4);
const toWide = makeTransform(press, WIDE_PROFILE, WAY);
/** Below the black of the profile in a primary of the working picture, where that ends. */
const isBeyondBlack = (ink: readonly number[]) => toWide.convert(ink).some((value) => value === 0);
const beyond = inks.filter(isBeyondBlack);
const relative = { intent: 'relative' } as const;

// ISO 18619 takes for the black of a CMYK profile the darkest neutral of its perceptual table. Much black ink under
// others is darker than that, and compensation leads it below nothing; one conversion to inks brings it back from
// there, a picture of RGB in between cannot hold it. What is lost is the tint of a near-black.
describe('inks darker than the black of their own profile', () => {
  it('are few, near black, and the only ones that the working picture clips', async () => {
    expect(beyond.length).toBeGreaterThan(10);
    expect(beyond.length / inks.length).toBeLessThan(0.1);
    const darkest = findSourceBlack(press, 'relative')[1];
    expect(darkest).toBeGreaterThan(0.015);
    for (const ink of beyond) expect(toLabD50(press, ink, relative)[0]).toBeLessThan(25);
    const made = await prepare(cmykArt(PRESS), COATED_REFERENCE);
    const losses = lossesOf(made, exactly(press, made, inks));
    const [within, without] = [false, true].map((side) =>
      losses.filter((_, i) => isBeyondBlack(inks[i]!) === side),
    );
    expect(Math.max(...within!)).toBeLessThan(3);
    expect(Math.max(...without!)).toBeGreaterThan(5);
  });

  it('are seen by Argyll as by the engine, and converted by Little CMS as in one exact step', (context) => {
    requireWitness(context, 'transicc', 'xicclu');
    const seen = askArgyll('press.icc', 'forwards', 'relative', beyond, { 'press.icc': PRESS });
    const printer = readProfile(COATED_REFERENCE);
    const files = { 'press.icc': PRESS, 'printer.icc': COATED_REFERENCE };
    const theirs = askLcms(
      { from: 'press.icc', to: 'printer.icc', ...WAY, files },
      beyond.map((ink) => ink.map((value) => value * 100)),
    );
    const direct = makeTransform(press, printer, WAY);
    const print = (device: readonly number[]) => toLabD50(printer, device, relative);
    for (const [i, ink] of beyond.entries()) {
      const [l, a, b] = toLabD50(press, ink, relative);
      for (const [k, value] of [l, a, b].entries()) expect(seen[i]![k]).toBeCloseTo(value, 3);
      // Little CMS interpolates four inks otherwise: up to 2 dE00, as in the published table of the reference.
      const converted = theirs[i]!.map((value) => value / 100);
      expect(deltaE2000(print(direct.convert(ink)), print(converted))).toBeLessThan(2.5);
    }
  });
});
