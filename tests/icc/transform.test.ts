import { describe, expect, it } from 'vitest';
import { curveTag, lutABTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { writeIcc } from '../../fixtures/byte-writers/write-icc.ts';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import type { Triple } from '../../src/colour/triple.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import { LAB_PROFILE } from '../../src/icc/lab-profile.ts';
import type { Intent } from '../../src/icc/profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { randomColours } from './random-colours.ts';

const condition = readProfile(COATED_REFERENCE);
const relative = { intent: 'relative', blackPointCompensation: false } as const;
const compensated = { intent: 'relative', blackPointCompensation: true } as const;
const INTENTS: readonly Intent[] = ['perceptual', 'relative', 'saturation', 'absolute'];
const largestStep = (one: readonly number[], other: readonly number[]) =>
  Math.max(...one.map((value, i) => Math.abs(value - other[i]!)));
const tripleOf = ([x = 0, y = 0, z = 0]: readonly number[]): Triple => [x, y, z];

/** A printer of five inks: each takes away light evenly. */
const FIVE_INKS = readProfile(
  writeIcc({
    majorVersion: 4,
    profileClass: 'prtr',
    space: '5CLR',
    connection: 'Lab ',
    tags: {
      A2B0: lutABTag('mAB ', {
        inputs: 5,
        outputs: 3,
        a: Array(5).fill(curveTag([])),
        grid: {
          sizes: [2, 2, 2, 2, 2],
          bytes: 1,
          nodes: Array.from({ length: 32 }, (_, node) => [
            255 - 8 * node,
            128 + 3 * node,
            128 - 2 * node,
          ]).flat(),
        },
        b: Array(3).fill(curveTag([])),
      }),
    },
  }),
);

describe('a transform', () => {
  it('from a space to itself changes nothing', () => {
    for (const colour of randomColours(1, 200, 3)) {
      for (const intent of INTENTS) {
        const same = makeTransform(SRGB_PROFILE, SRGB_PROFILE, {
          intent,
          blackPointCompensation: true,
        }).convert(colour);
        expect(Math.max(...same.map((value, i) => Math.abs(value - colour[i]!)))).toBeLessThan(1e-8);
      }
    }
  });

  it('with compensation brings black to black, and leaves white where it is', () => {
    const [l] = makeTransform(condition, LAB_PROFILE, compensated).convert(
      makeTransform(LAB_PROFILE, condition, { intent: 'perceptual', blackPointCompensation: false }).convert([
        0, 0, 0,
      ]),
    );
    expect(Math.abs(l!)).toBeLessThan(0.05);
    const paper = makeTransform(condition, LAB_PROFILE, compensated).convert([0, 0, 0, 0]);
    expect(deltaE2000(tripleOf(paper), [100, 0, 0])).toBeLessThan(0.001);
  });

  it('absolute tells the paper, and compensation has no part in it', () => {
    for (const blackPointCompensation of [false, true]) {
      const options = { intent: 'absolute', blackPointCompensation } as const;
      const paper = makeTransform(condition, LAB_PROFILE, options).convert([0, 0, 0, 0]);
      // TR 006 as measured: 95.00 -0.02 -1.96.
      expect(deltaE2000(tripleOf(paper), [95, -0.02, -1.96])).toBeLessThan(0.2);
    }
  });

  it('compensates black on the way to a version 4 device even when not asked, but only for perceptual and saturation', () => {
    const black = [1, 1, 1, 1];
    const lightness = (intent: Intent) => {
      const options = { intent, blackPointCompensation: false };
      return toLabD50(SRGB_PROFILE, makeTransform(condition, SRGB_PROFILE, options).convert(black), {
        intent,
      })[0];
    };
    expect(lightness('relative')).toBeGreaterThan(9);
    expect(lightness('perceptual')).toBeLessThan(0.2);
    expect(lightness('saturation')).toBeLessThan(0.2);
    // Lab is no device: what is asked for is what the colour looks like.
    const look = makeTransform(condition, LAB_PROFILE, {
      intent: 'perceptual',
      blackPointCompensation: false,
    });
    expect(tripleOf(look.convert(black))).toEqual(toLabD50(condition, black, { intent: 'perceptual' }));
  });
});

describe('compiled for pixels', () => {
  // 16-bit samples, so that rounding has no part; of 2000 colours the farthest.
  it.each([
    ['sRGB to ink', SRGB_PROFILE, condition, 0.8],
    ['ink to sRGB', condition, SRGB_PROFILE, 0.5],
    ['ink to Lab', condition, LAB_PROFILE, 0.8],
    ['sRGB to Lab', SRGB_PROFILE, LAB_PROFILE, 0.2],
  ] as const)('%s lies within what nobody sees', (_, source, target, limit) => {
    const transform = makeTransform(source, target, compensated);
    const pixels = transform.compile();
    const colours = randomColours(3, 2000, source.channels);
    const samples = Uint16Array.from(colours.flat(), (value) => Math.round(value * 65535));
    const result = new Uint16Array(colours.length * target.channels);
    pixels.convert16(samples, result, colours.length);
    const look = (colour: readonly number[]) =>
      target === LAB_PROFILE ? tripleOf(colour) : toLabD50(target, colour, { intent: 'relative' });
    for (let i = 0; i < colours.length; i++) {
      const device = [...samples.subarray(i * source.channels, (i + 1) * source.channels)].map(
        (code) => code / 65535,
      );
      const found = [...result.subarray(i * target.channels, (i + 1) * target.channels)].map(
        (code) => code / 65535,
      );
      const natural =
        target === LAB_PROFILE ? [found[0]! * 100, found[1]! * 255 - 128, found[2]! * 255 - 128] : found;
      expect(deltaE2000(look(transform.convert(device)), look(natural))).toBeLessThan(limit);
    }
  });

  it('of five inks is what single colours are, but for the rounding', () => {
    const transform = makeTransform(FIVE_INKS, SRGB_PROFILE, relative);
    const colours = randomColours(5, 100, 5);
    const samples = Uint8Array.from(colours.flat(), (value) => Math.round(value * 255));
    const result = new Uint8Array(300);
    transform.compile().convert8(samples, result, 100);
    for (let i = 0; i < 100; i++) {
      const device = [...samples.subarray(5 * i, 5 * i + 5)].map((code) => code / 255);
      const exact = transform.convert(device).map((value) => value * 255);
      expect(largestStep(exact, [...result.subarray(3 * i, 3 * i + 3)])).toBeLessThan(0.5001);
    }
  });
});
