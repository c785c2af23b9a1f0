import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { makeGamutJudge } from '../../src/icc/gamut.ts';
import { makeGamutTable, UNITS_PER_DELTA_E } from '../../src/icc/gamut-table.ts';
import { LAB_PROFILE } from '../../src/icc/lab-profile.ts';
import { measureProfileNoise } from '../../src/icc/profile-noise.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { readReferenceTable } from '../colour/reference-table.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { makeGenerator, randomColours } from './random-colours.ts';

const condition = readProfile(COATED_REFERENCE);
const judge = makeGamutJudge(condition, SRGB_PROFILE);
const table = makeGamutTable(condition);

describe('against the true gamut of the reference condition', () => {
  const rows = readReferenceTable('gamut-truth.tsv').map((row) => {
    const rgb = row.triple('R', 'G', 'B').map((code) => code / 255);
    return { truth: row.number('bpc_min'), roundTrip: row.number('bpc_rt_tetra'), found: judge.measure(rgb) };
  });
  const outside = rows.filter(({ truth }) => truth > 3);
  const inside = rows.filter(({ truth }) => truth <= 0.5);

  it('has rows enough on either side', () => {
    expect(rows).toHaveLength(250);
    expect(outside.length).toBeGreaterThan(70);
    expect(inside.length).toBeGreaterThan(100);
  });

  it('misses no colour that cannot be printed', () => {
    expect(outside.filter(({ found }) => found <= 3)).toEqual([]);
  });

  // A plain round trip flags 5 % of them.
  it('flags no colour that can be printed', () => {
    expect(inside.filter(({ roundTrip }) => roundTrip > 3)).toHaveLength(6);
    expect(inside.filter(({ found }) => found > 3)).toEqual([]);
  });

  // The truth was searched for to three or four decimals.
  it('never claims to come nearer than anything can, nor loses what the plain round trip had', () => {
    for (const { truth, roundTrip, found } of rows) {
      expect(found).toBeGreaterThan(truth - 0.001);
      expect(found).toBeLessThan(roundTrip + 0.001);
    }
  });
});

describe('a reproduction', () => {
  it('states what it measured', () => {
    const look = makeTransform(SRGB_PROFILE, LAB_PROFILE, {
      intent: 'relative',
      blackPointCompensation: true,
    });
    for (const rgb of randomColours(12, 300, 3)) {
      const { deltaE, sourceLabD50, printedLabD50 } = judge.reproduce(rgb);
      expect(deltaE).toBe(judge.measure(rgb));
      expect(deltaE2000(sourceLabD50, printedLabD50)).toBeCloseTo(deltaE, 9);
      for (const [i, value] of look.convert(rgb).entries()) expect(sourceLabD50[i]).toBeCloseTo(value, 9);
    }
  });

  // Neutral, so that the two blacks and the paper decide: black compensation keeps both ends.
  it('loses little of white, grays and black', () => {
    for (const level of [0, 0.1, 0.25, 0.5, 0.75, 1])
      expect(judge.measure([level, level, level])).toBeLessThan(1);
  });

  it('of full green and full blue is far off', () => {
    expect(judge.measure([0, 1, 0])).toBeGreaterThan(10);
    expect(judge.measure([0, 0, 1])).toBeGreaterThan(10);
  });

  it('of a space in itself loses nothing', () => {
    const own = makeGamutJudge(SRGB_PROFILE, SRGB_PROFILE);
    for (const rgb of randomColours(13, 200, 3)) expect(own.measure(rgb)).toBeLessThan(1e-5);
  });
});

describe('the table', () => {
  const pixels = 20_000;
  const next = makeGenerator(52);
  const codes = Uint8Array.from({ length: pixels * 3 }, () => next() >>> 24);
  const found = new Uint16Array(pixels);
  table.measure8(codes, found, pixels);

  it('gives the verdict of single colours for 999 of 1000 colours of the cube', () => {
    let agreed = 0;
    for (let i = 0; i < pixels; i++) {
      const exact = table.measure([...codes.subarray(3 * i, 3 * i + 3)].map((code) => code / 255));
      if (exact > table.limit === found[i]! / UNITS_PER_DELTA_E > table.limit) agreed++;
    }
    expect(agreed / pixels).toBeGreaterThanOrEqual(0.999);
  });

  it('is what single colours are at its nodes near the limit, and on the right side of it everywhere', () => {
    const nodes = 53;
    const codeAt = (node: number) => Math.round((node * 65535) / (nodes - 1));
    const colours = Uint16Array.from({ length: nodes ** 3 * 3 }, (_, i) => {
      const node = Math.floor(i / 3);
      return codeAt(
        [node % nodes, Math.floor(node / nodes) % nodes, Math.floor(node / nodes ** 2)][i % 3] ?? 0,
      );
    });
    const differences = new Uint16Array(nodes ** 3);
    table.measure16(colours, differences, nodes ** 3);
    let [exactly, wrong, wrongOver5, worstNear, worst] = [0, 0, 0, 0, 0];
    for (let i = 0; i < nodes ** 3; i++) {
      const exact = table.measure([...colours.subarray(3 * i, 3 * i + 3)].map((code) => code / 65535));
      const found = differences[i]! / UNITS_PER_DELTA_E;
      const error = Math.abs(found - exact);
      if (error < 1 / UNITS_PER_DELTA_E) exactly++;
      else worst = Math.max(worst, error);
      if (exact > 0.95 * table.limit && exact < 1.1 * table.limit) worstNear = Math.max(worstNear, error);
      if (Math.abs(exact - table.limit) > 0.002 && exact > table.limit !== found > table.limit) wrong++;
      if (exact > 5 !== found > 5) wrongOver5++;
    }
    expect(wrong).toBe(0);
    expect(wrongOver5).toBeLessThan(0.001 * nodes ** 3);
    expect(worstNear).toBeLessThan(0.02);
    expect(exactly).toBeGreaterThan(0.2 * nodes ** 3);
    expect(worst).toBeLessThan(2);
  });

  it('gives the same for 16-bit pixels and passes over alpha', () => {
    const deep = new Uint16Array(pixels);
    table.measure16(
      Uint16Array.from(codes, (code) => code * 257),
      deep,
      pixels,
    );
    expect(deep).toEqual(found);
    const withAlpha = new Uint8Array(400).fill(1);
    for (let i = 0; i < 100; i++) withAlpha.set(codes.subarray(3 * i, 3 * i + 3), 4 * i);
    const passed = new Uint16Array(100);
    table.measure8(withAlpha, passed, 100, 4);
    expect(passed).toEqual(found.subarray(0, 100));
  });

  it('refuses pictures of other than three channels', () => {
    expect(() => makeGamutTable(condition, condition)).toThrow(
      expect.objectContaining({ code: 'profile-unsupported' }),
    );
  });
});

describe('the noise of a profile', () => {
  // Measured on other samples of 4000 colours: 1.9 to 2.1 (the condition's own notes), 2.2 to 2.4.
  it('of the reference condition is about 2 dE00, so that the limit is 3', () => {
    expect(table.noise).toBeGreaterThan(1.9);
    expect(table.noise).toBeLessThan(2.4);
    expect(table.limit).toBe(3);
    expect(measureProfileNoise(condition)).toBe(table.noise);
  });

  it('of a profile without tables is none', () => {
    expect(measureProfileNoise(SRGB_PROFILE)).toBeLessThan(1e-5);
  });
});
