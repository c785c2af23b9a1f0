import { describe, expect, it } from 'vitest';
import { DRIVER_CONVERSION } from '../../src/conditions/printer-conversion.ts';
import { fromLabD50, toLabD50 } from '../../src/icc/lab-d50.ts';
import { makeLightnessTable, UNITS_PER_LIGHTNESS } from '../../src/icc/lightness-table.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { readReferenceTable } from '../colour/reference-table.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { randomColours } from './random-colours.ts';

const condition = readProfile(COATED_REFERENCE);
const table = makeLightnessTable(condition, SRGB_PROFILE, DRIVER_CONVERSION);
const gray = (code: number) => [code / 255, code / 255, code / 255];

describe('lightness in art and print', () => {
  // Second engine: Little CMS, relative colorimetric without compensation. The engines interpolate differently: by up to
  // 1.07 L* here, in an inverse whose nodes are far apart.
  it('is that of Little CMS', () => {
    const rows = readReferenceTable('coated-reference-roundtrip.tsv');
    expect(rows.length).toBeGreaterThan(100);
    for (const row of rows) {
      const { source, printed } = table.measure(row.triple('sR', 'sG', 'sB').map((code) => code / 255));
      expect(Math.abs(source - row.number('src_L'))).toBeLessThan(0.001);
      expect(Math.abs(printed - row.number('rel_print_L'))).toBeLessThan(1.1);
    }
  });

  it('is the way through the tables, one after the other', () => {
    const intent = { intent: 'relative' } as const;
    for (const rgb of randomColours(4, 200, 3)) {
      const lab = toLabD50(SRGB_PROFILE, rgb, intent);
      const printed = toLabD50(condition, fromLabD50(condition, lab, intent), intent)[0];
      expect(table.measure(rgb).source).toBeCloseTo(lab[0], 9);
      expect(table.measure(rgb).printed).toBeCloseTo(printed, 9);
    }
  });

  // Measured with Argyll and with Little CMS beside the profile: neutral codes 0 to 22 print within 0.5 L* of black.
  it('merges neutral codes 0 to 22 on the reference, and no more', () => {
    expect(table.printedBlack).toBeCloseTo(8.97, 2);
    const merged = (code: number) => table.measure(gray(code)).printed <= table.printedBlack + 0.5;
    expect(Array.from({ length: 60 }, (_, code) => code).filter(merged)).toEqual(
      Array.from({ length: 23 }, (_, code) => code),
    );
  });
});

describe('the table', () => {
  it('comes within 0.1 L* of single colours in the art and 0.5 in print up to 16 above black, at 8 and 16 bits, and passes over alpha', () => {
    const colours = randomColours(9, 2000, 3).map((rgb) => rgb.map((value) => Math.round(value * 100)));
    const codes = Uint8Array.from(colours.flatMap((rgb) => [...rgb, 7]));
    const [found, deep] = [new Uint16Array(4000), new Uint16Array(4000)];
    table.measure8(codes, found, 2000, 4);
    table.measure16(
      Uint16Array.from(codes, (code) => code * 257),
      deep,
      2000,
      4,
    );
    expect(deep).toEqual(found);
    for (const [i, rgb] of colours.entries()) {
      const { source, printed } = table.measure(rgb.map((code) => code / 255));
      const isDark = source <= table.printedBlack + 16;
      expect(Math.abs(found[2 * i]! / UNITS_PER_LIGHTNESS - source)).toBeLessThan(isDark ? 0.1 : 1);
      expect(Math.abs(found[2 * i + 1]! / UNITS_PER_LIGHTNESS - printed)).toBeLessThan(isDark ? 0.5 : 1);
    }
  });

  it('has bounds that every colour keeps which is no lighter', () => {
    const bounds = table.findBounds(12);
    expect(bounds.every((bound) => bound > 0 && bound < 1)).toBe(true);
    const dark = randomColours(5, 3000, 3).map((rgb) => rgb.map((value) => value * 0.4));
    const kept = dark.filter((rgb) => table.measure(rgb).source <= 12);
    expect(kept.length).toBeGreaterThan(100);
    for (const rgb of kept) expect(rgb.every((value, i) => value <= bounds[i]!)).toBe(true);
    expect(table.findBounds(100)).toEqual([1, 1, 1]);
  });

  it('refuses pictures of other than three channels', () => {
    expect(() => makeLightnessTable(condition, condition, DRIVER_CONVERSION)).toThrow(
      expect.objectContaining({ code: 'profile-unsupported' }),
    );
  });
});

describe('the conversion that will be made', () => {
  const compensated = makeLightnessTable(condition, SRGB_PROFILE, {
    intent: 'relative',
    blackPointCompensation: true,
  });
  const merged = ({ measure, printedBlack }: typeof table) => {
    const codes = Array.from({ length: 41 }, (_, code) => code);
    return codes.filter((code) => measure([code / 255, code / 255, code / 255]).printed <= printedBlack + 0.5)
      .length;
  };

  // Measured with other code on this profile: neutral codes 0 to 22 print as one black, with compensation 0 to 3.
  it('merges the shadows of a driver, and hardly any where black is compensated', () => {
    expect(merged(table)).toBe(23);
    expect(merged(compensated)).toBe(4);
  });
});
