import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { codesOf, coloursOf, exactly, P3, prepare, RGB_PRINTER, rgbArt, SIDE } from './jobs.ts';

describe('wide art of 16 bits', () => {
  const deep = codesOf(3, 65535);
  /** Every other column but the last, so that the art is as wide as its file. */
  const isClear = (i: number) => i % 2 === 1 && i % SIDE !== SIDE - 1;
  it('reaches the conversion unrounded', async () => {
    const made = await prepare(rgbArt(P3, deep, { bitDepth: 16 }), RGB_PRINTER);
    const colours = coloursOf(deep, 3, 65535);
    const source = readProfile(P3);
    const wanted = exactly(source, made, colours);
    for (const [i, pixel] of made.pixels.entries())
      for (const k of [0, 1, 2]) expect(Math.abs(pixel[k]! - wanted[i]![k]! * 255)).toBeLessThanOrEqual(0.51);
    // What rounding to 8 bits on the way would cost, before the file itself is rounded.
    const rounded = colours.map((colour) => colour.map((value) => Math.round(value * 255) / 255));
    const print = (device: readonly number[]) =>
      toLabD50(made.conversion.profile, device, { intent: 'relative' });
    const losses = exactly(source, made, rounded).map((device, i) =>
      deltaE2000(print(device), print(wanted[i]!)),
    );
    expect(Math.max(...losses)).toBeGreaterThan(0.1);
  });

  it('keeps its alpha over a clear background, and lies on a coloured one in one conversion', async () => {
    const half = coloursOf(deep, 3, 1).flatMap((colour, i) => [...colour, isClear(i) ? 0 : 65535]);
    const art = rgbArt(P3, half, { bitDepth: 16, alpha: true });
    const clear = await prepare(art, RGB_PRINTER, { background: { r: 0, g: 0, b: 0, alpha: 0 } });
    expect(clear.corner[3]).toBe(0);
    expect(clear.pixels.map((pixel) => pixel[3])).toEqual(clear.pixels.map((_, i) => (isClear(i) ? 0 : 255)));
    const green = [20, 160, 60] as const;
    const background = { r: green[0], g: green[1], b: green[2], alpha: 1 } as const;
    const laid = await prepare(art, RGB_PRINTER, { background });
    const onSrgb = exactly(SRGB_PROFILE, laid, [green.map((code) => code / 255)])[0]!;
    for (const k of [0, 1, 2]) {
      expect(Math.abs(laid.corner[k]! - onSrgb[k]! * 255)).toBeLessThanOrEqual(0.6);
      expect(laid.pixels[1]![k]).toBe(laid.corner[k]);
      expect(laid.pixels[0]![k]).toBe(clear.pixels[0]![k]);
    }
  });
});
