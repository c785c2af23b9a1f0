import { describe, expect, it } from 'vitest';
import { findBlank } from '../../src/catalogue/catalogue.ts';
import { MM_PER_INCH } from '../../src/geometry/length.ts';
import { paperFile } from './seed-files.ts';

const { sheets, rolls, margins, behaviour } = paperFile;
const sheet = (id: string) => sheets.find((record) => record.id === id)!;

describe('sheets', () => {
  // ISO 216:2007: A0 is 841 x 1189 mm; each size is the one before halved across its longer side, rounded down.
  it('of the A series follow from A0 by halving', () => {
    let [widthMm, heightMm] = [841, 1189];
    const found: string[] = [];
    for (let n = 0; n <= 6; n += 1) {
      const record = sheets.find(({ id }) => id === `a${n}`);
      if (record) {
        expect([record.widthMm, record.heightMm], record.id).toEqual([widthMm, heightMm]);
        found.push(record.id);
      }
      [widthMm, heightMm] = [Math.floor(heightMm / 2), widthMm];
    }
    expect(found).toEqual(['a2', 'a3', 'a4', 'a5', 'a6']);
  });

  // ANSI/ASME Y14.1: A is 8.5 x 11 in; each size is two of the one before along their longer sides.
  it('of the ANSI series follow from 8.5 x 11 in by doubling', () => {
    let [widthIn, heightIn] = [8.5, 11];
    for (const id of ['letter', 'tabloid', 'ansi-c']) {
      expect(sheet(id).widthMm).toBeCloseTo(widthIn * MM_PER_INCH, 9);
      expect(sheet(id).heightMm).toBeCloseTo(heightIn * MM_PER_INCH, 9);
      [widthIn, heightIn] = [heightIn, widthIn * 2];
    }
  });

  // Common trade sizes, no source: 8.5 x 14 in and 13 x 19 in.
  it.each([
    ['legal', 8.5, 14],
    ['13x19in', 13, 19],
  ])('%s is %f x %f in', (id, widthIn, heightIn) => {
    expect(sheet(id).widthMm).toBeCloseTo(widthIn * MM_PER_INCH, 9);
    expect(sheet(id).heightMm).toBeCloseTo(heightIn * MM_PER_INCH, 9);
  });

  // PWG 5101.1: a self-describing name ends in the size, shorter side first.
  it('are as large as their media names and their ids say', () => {
    const named = sheets.flatMap(({ id, pwgName, widthMm, heightMm }) =>
      [pwgName, id].flatMap((text) => {
        const [, width, height, unit] = /([\d.]+)x([\d.]+)(mm|in)$/.exec(text ?? '') ?? [];
        return unit ? [{ widthMm, heightMm, width: Number(width), height: Number(height), unit }] : [];
      }),
    );
    expect(named.length).toBe(16);
    for (const { widthMm, heightMm, width, height, unit } of named) {
      const perUnit = unit === 'in' ? MM_PER_INCH : 1;
      expect([widthMm, heightMm]).toEqual([round(width * perUnit), round(height * perUnit)]);
    }
  });
});

describe('rolls and margins', () => {
  it('rolls are as wide in mm as in inches, and as their ids say', () => {
    expect(rolls.map(({ widthIn }) => widthIn).sort((a, b) => a - b)).toEqual([
      8.5, 13, 17, 24, 36, 44, 60, 63, 64, 74,
    ]);
    for (const { id, widthIn, widthMm } of rolls) {
      expect(widthMm, id).toBe(round(widthIn * MM_PER_INCH));
      expect(id).toBe(`roll-${widthIn}in`);
    }
  });

  // Common practice, no source.
  it('margins are the usual ones, a quarter inch where the printer is unknown', () => {
    const sides = Object.fromEntries(margins.map(({ id, sidesMm }) => [id, [sidesMm.min, sidesMm.max]]));
    expect(sides).toEqual({
      borderless: [0, 0],
      'desktop-modern': [3, 3.4],
      'older-or-office': [4.2, 6.35],
      unknown: [MM_PER_INCH / 4, MM_PER_INCH / 4],
    });
    expect(margins.filter((record) => record.default).map(({ id }) => id)).toEqual(['unknown']);
  });

  // ISO 216:2007, tolerances (recalled): 1.5 mm up to 150 mm, 2 mm up to 600 mm, 3 mm above.
  it('sheets are cut to the tolerance of ISO 216', () => {
    expect(behaviour.find(({ id }) => id === 'cut-tolerance')?.steps).toEqual([
      { upToMm: 150, plusMinusMm: 1.5 },
      { upToMm: 600, plusMinusMm: 2 },
      { aboveMm: 600, plusMinusMm: 3 },
    ]);
  });
});

describe('blanks of a published size', () => {
  // ISO/IEC 7810:2019, ID-1: 85.60 x 53.98 mm, corners of 3.18 mm.
  it('the card is an ID-1 card', () => {
    expect(findBlank('card-alu-id1')?.outline).toEqual({
      shape: 'rounded-rect',
      widthMm: 85.6,
      heightMm: 53.98,
      cornerRadiusMm: 3.18,
    });
  });

  // SAE J686 (recalled): slots of the plate 7 in apart across and 4.75 in down, about its middle.
  it('the vehicle plate has its slots at the bolts', () => {
    const { outline, holes } = findBlank('plate-vehicle-12x6')!;
    const xs = [...new Set(holes!.map(({ xMm }) => xMm))];
    const ys = [...new Set(holes!.map(({ yMm }) => yMm))];
    expect(xs[1]! - xs[0]!).toBeCloseTo(7 * MM_PER_INCH, 9);
    expect(ys[1]! - ys[0]!).toBeCloseTo(4.75 * MM_PER_INCH, 9);
    expect(Math.abs((xs[0]! + xs[1]!) / 2 - outline!.widthMm / 2)).toBeLessThan(0.01);
    expect(Math.abs((ys[0]! + ys[1]!) / 2 - outline!.heightMm / 2)).toBeLessThan(0.01);
  });

  // Common practice, no source: art 7.00 in wide on a tile sold as 8 in leaves 11.1 mm on each side.
  it('the 8 in tile leaves 11.1 mm on each side of art 7.00 in wide', () => {
    const { widthMm, heightMm } = findBlank('tile-ceramic-8in')!.outline!;
    expect([widthMm, heightMm]).toEqual([200, 200]);
    expect((widthMm - 7 * MM_PER_INCH) / 2).toBeCloseTo(11.1, 9);
  });
});

/** Free of the noise of double arithmetic; sizes are written to a hundredth of a millimetre at most. */
function round(mm: number): number {
  return Number(mm.toFixed(6));
}
