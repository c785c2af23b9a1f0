import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { labToXyzD50 } from '../../src/colour/lab.ts';
import { findSourceBlack, findTargetBlack } from '../../src/icc/black-point.ts';
import { fromLabD50, toLabD50 } from '../../src/icc/lab-d50.ts';
import { LAB_PROFILE } from '../../src/icc/lab-profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { type ReferenceRow, readReferenceTable } from '../colour/reference-table.ts';
import { COATED_REFERENCE } from './coated-reference.ts';

const condition = readProfile(COATED_REFERENCE);
const relative = { intent: 'relative' } as const;
const absolute = { intent: 'absolute' } as const;
const ink = (row: ReferenceRow, prefix = '') =>
  ['C', 'M', 'Y', 'K'].map((name) => row.number(prefix + name) / 100);
const labOf = ([l = 0, a = 0, b = 0]: readonly number[]) => [l, a, b] as const;

describe('forwards, against Argyll', () => {
  const rows = readReferenceTable('coated-reference-forward.tsv');
  it('has 100 rows', () => expect(rows).toHaveLength(100));

  // Same interpolation (simplex over four axes); the table is printed with six decimals of Lab.
  it('agrees within 0.0001 dE00 in every row', () => {
    for (const row of rows)
      expect(deltaE2000(toLabD50(condition, ink(row), relative), row.lab('argyll_'))).toBeLessThan(0.0001);
  });

  // lcms interpolates linearly along C; the two engines differ by up to 0.42 in this table.
  it('lies as far from Little CMS as Argyll does', () => {
    for (const row of rows) {
      const own = deltaE2000(toLabD50(condition, ink(row), relative), row.lab('lcms_'));
      expect(Math.abs(own - row.number('dE00'))).toBeLessThan(0.0002);
    }
  });
});

describe('backwards, against Argyll', () => {
  const rows = readReferenceTable('coated-reference-inverse.tsv');
  it('has 100 rows', () => expect(rows).toHaveLength(100));

  // Tetrahedral both; the table is printed with four decimals of ink percent.
  it('agrees within 0.0001 ink percent in every row', () => {
    for (const row of rows)
      for (const [i, value] of fromLabD50(condition, row.lab(''), relative).entries())
        expect(Math.abs(value - ink(row, 'argyll_')[i]!)).toBeLessThan(0.000001);
  });

  // lcms interpolates trilinearly here: nowhere further from it than Argyll is.
  it('lies within the known spread of Little CMS', () => {
    for (const row of rows)
      for (const [i, value] of fromLabD50(condition, row.lab(''), relative).entries())
        expect(Math.abs(value - ink(row, 'lcms_')[i]!) * 100).toBeLessThan(
          row.number('max_ink_diff') + 0.0005,
        );
  });
});

describe('there and back from sRGB', () => {
  const rows = readReferenceTable('coated-reference-roundtrip.tsv');
  it('has 150 rows', () => expect(rows).toHaveLength(150));

  // Printed with four decimals of dE00; the source's Lab was rounded to four decimals before it went to Argyll.
  it.each([
    ['bpc_', true],
    ['rel_', false],
  ] as const)(
    'with prefix %s loses what Argyll and the separate computation lose',
    (prefix, blackPointCompensation) => {
      const options = { intent: 'relative', blackPointCompensation } as const;
      const toInk = makeTransform(SRGB_PROFILE, condition, options);
      const toLab = makeTransform(condition, LAB_PROFILE, options);
      const look = makeTransform(SRGB_PROFILE, LAB_PROFILE, options);
      for (const row of rows) {
        const rgb = row.triple('sR', 'sG', 'sB').map((code) => code / 255);
        const source = labOf(look.convert(rgb));
        const proof = labOf(toLab.convert(toInk.convert(rgb)));
        const loss = deltaE2000(source, proof);
        expect(deltaE2000(source, row.lab('src_'))).toBeLessThan(0.0002);
        expect(Math.abs(loss - row.number(`${prefix}dE00_argyll`))).toBeLessThan(0.0003);
        expect(Math.abs(loss - row.number(`${prefix}dE00_tetra`))).toBeLessThan(0.0003);
      }
    },
  );
});

describe('black and white', () => {
  const rows = readReferenceTable('black-points.tsv');
  const colours = rows.filter((row) => row.text('C') !== 'NA');
  const row = (start: string) => rows.find((candidate) => candidate.text('name').startsWith(start))!;

  it('has eleven printed colours', () => expect(colours).toHaveLength(11));

  it('prints solids and overprints as both engines do, relative', () => {
    for (const colour of colours) {
      const lab = toLabD50(condition, ink(colour), relative);
      expect(deltaE2000(lab, colour.lab('rel_argyll_'))).toBeLessThan(0.0005);
      // At the corners of the table interpolation plays no part; lcms rounds to 16 bit.
      if (colour.text('name') !== 'black = B2A1 of Lab 0 0 0')
        expect(deltaE2000(lab, colour.lab('rel_lcms_'))).toBeLessThan(0.005);
    }
  });

  // The ICC rule (media white, axis by axis), as lcms; TR 006 itself is 0.4 away, as the table's description says.
  it('prints them as Little CMS does, absolute, and near to what TR 006 measured', () => {
    for (const colour of colours) {
      const lab = toLabD50(condition, ink(colour), absolute);
      expect(deltaE2000(lab, colour.lab('abs_lcms_'))).toBeLessThan(0.005);
      if (colour.text('abs_measured_L') !== 'NA')
        expect(deltaE2000(lab, colour.lab('abs_measured_'))).toBeLessThan(0.5);
    }
  });

  it('finds the black that Little CMS finds, as source and as destination', () => {
    for (const [found, name] of [
      [findSourceBlack(condition, 'relative'), 'BPC black, profile as source'],
      [findTargetBlack(condition, 'relative'), 'BPC black, profile as destination'],
    ] as const)
      for (const [i, value] of found.entries())
        expect(Math.abs(value - row(name).triple('X', 'Y again', 'Z')[i]!)).toBeLessThan(1e-6);
  });

  it('does not take the black point tag, which lies elsewhere', () => {
    const tag = row('bkpt').triple('X', 'Y again', 'Z');
    expect(Math.abs(findSourceBlack(condition, 'relative')[1] - tag[1])).toBeGreaterThan(0.001);
    expect(labToXyzD50([8.9721, 0, 0])[1]).toBeCloseTo(
      row('BPC black, profile as source').number('Y again'),
      6,
    );
  });

  it('reads the media white', () => {
    for (const [i, value] of condition.mediaWhiteXyz.entries())
      expect(value).toBeCloseTo(row('wtpt').triple('X', 'Y again', 'Z')[i]!, 7);
  });
});
