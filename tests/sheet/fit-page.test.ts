import { describe, expect, it } from 'vitest';
import { findSmallestSheets } from '../../src/sheet/find-smallest-sheets.ts';
import { fitPage, leavesNoRoom } from '../../src/sheet/fit-page.ts';
import { parsePaper } from '../../src/sheet/parse-paper.ts';
import { equalMargins } from './equal-margins.ts';

const around = (mm: number) => equalMargins({ left: mm, right: mm, top: mm, bottom: mm });

describe('sheets', () => {
  it.each([
    // ISO 216, table 1
    ['a2', 420, 594],
    ['a3', 297, 420],
    ['a4', 210, 297],
    ['a5', 148, 210],
    ['a6', 105, 148],
    // ANSI/ASME Y14.1: 8.5 x 11, 11 x 17 and 17 x 22 in
    ['letter', 8.5 * 25.4, 11 * 25.4],
    ['tabloid', 11 * 25.4, 17 * 25.4],
    ['ansi-c', 17 * 25.4, 22 * 25.4],
    ['ledger', 11 * 25.4, 17 * 25.4],
    ['a3+', 329, 483],
    ['13x19in', 13 * 25.4, 19 * 25.4],
    ['legal', 8.5 * 25.4, 14 * 25.4],
    ['LETTER', 8.5 * 25.4, 11 * 25.4],
  ])('%s', (word, width, height) => {
    const { widthMm, heightMm } = parsePaper(word);
    expect([widthMm, heightMm]).toEqual([expect.closeTo(width, 6), expect.closeTo(height!, 6)]);
  });

  it('takes sizes, upright, and rolls', () => {
    expect(parsePaper('300x200mm')).toEqual({ id: '300x200mm', widthMm: 200, heightMm: 300 });
    expect(parsePaper('roll:24in')).toMatchObject({ widthMm: expect.closeTo(609.6, 6), heightMm: null });
    expect(parsePaper('roll-24in')).toMatchObject({ id: 'roll-24in', widthMm: 609.6, heightMm: null });
  });

  it.each([
    ['a44', 'unknown-sheet'],
    ['leter', 'unknown-sheet'],
    ['round:20mm', 'bad-size'],
    ['20x30', 'length-without-unit'],
    ['roll:0mm', 'bad-length'],
    ['roll:24', 'length-without-unit'],
    ['6000x100mm', 'bad-size'],
  ])('refuses %s', (word, code) => {
    expect(() => parsePaper(word)).toThrow(expect.objectContaining({ code }));
  });
});

/** Outline with its bleed, and the smallest sheets at equal margins of 3 and of 6.35 mm: derived from the sizes alone. */
const BLANKS = [
  ['tile 8 in', 206, 206, 'a3', 'a3', 'letter', 'tabloid'],
  ['panel 8 x 10 in', 209.2, 260, 'a3', 'a3', 'letter', 'tabloid'],
  ['clock 8 in', 209.2, 209.2, 'a3', 'a3', 'letter', 'tabloid'],
  ['panel 16 x 20 in', 416.4, 518, 'roll-17in', 'roll-17in', 'ansi-c', 'ansi-c'],
  ['plate 12 x 6 in', 307.8, 155.4, 'a3', 'a3', 'legal', 'legal'],
  ['cutting board', 291, 206, 'a3', 'a3', 'legal', 'tabloid'],
  ['mouse mat', 243, 205, 'a3', 'a3', 'letter', 'tabloid'],
  ['round mouse mat', 208, 208, 'a3', 'a3', 'letter', 'tabloid'],
  ['cushion 16 in', 401, 401, 'a2', 'a2', 'ansi-c', 'ansi-c'],
  ['T-shirt front', 304.8, 355.6, 'a2', 'a2', '13x19in', '13x19in'],
  ['garden flag', 324.8, 477.2, 'a2', 'a2', 'ansi-c', 'ansi-c'],
  ['puzzle 8 x 10 in', 211.2, 262, 'a3', 'a3', 'tabloid', 'tabloid'],
  ['straight tumbler 20 oz', 235.5, 208.3, 'a3', 'a3', 'letter', 'tabloid'],
  ['slightly tapered tumbler 20 oz', 238.2, 207.1, 'a3', 'a3', 'letter', 'tabloid'],
  ['straight tumbler 30 oz', 259, 238, 'a3', 'a3', 'tabloid', 'tabloid'],
  ['tapered tumbler 20 oz', 276.5, 150.8, 'a4', 'a4', 'legal', 'legal'],
] as const;

describe('findSmallestSheets', () => {
  it.each(BLANKS)('%s', (_, width, height, iso3, iso6, inch3, inch6) => {
    const [at3, at6] = [3, 6.35].map((mm) => findSmallestSheets({ width, height }, around(mm)));
    expect([at3!.iso ?? at3!.roll, at6!.iso ?? at6!.roll]).toEqual([iso3, iso6]);
    expect([at3!.inch, at6!.inch]).toEqual([inch3, inch6]);
  });

  it('tells a device that misses by a tenth of a millimetre from one that does not', () => {
    const panel = { width: 209.2, height: 209.2 };
    const letter = parsePaper('letter');
    expect(fitPage(panel, letter, around(3.35))).not.toBeNull();
    expect(fitPage(panel, letter, around(3.4))).toBeNull();
  });

  it('finds no sheet and no roll for a wall', () => {
    expect(findSmallestSheets({ width: 2000, height: 2000 }, around(3))).toEqual({
      iso: null,
      inch: null,
      roll: null,
    });
  });
});

describe('fitPage', () => {
  const held = (width: number, height: number, word = 'a4', mm = 3) =>
    fitPage({ width, height }, parsePaper(word), around(mm))?.orientation;

  it('holds the sheet as the piece lies, and upright where that is all the same', () => {
    expect(held(100, 150)).toBe('portrait');
    expect(held(150, 100)).toBe('landscape');
    expect(held(291, 204)).toBe('landscape');
    expect(held(100, 100)).toBe('portrait');
    expect(held(291, 205)).toBeUndefined();
  });

  it('cuts a roll as long as is needed', () => {
    const page = fitPage({ width: 500, height: 1200 }, parsePaper('roll:600mm'), around(5))!;
    expect(page.sizeMm).toEqual({ width: 600, height: 1210 });
    expect(page.printableMm).toEqual({ x: 5, y: 5, width: 590, height: 1200 });
    expect(fitPage({ width: 1200, height: 500 }, parsePaper('roll:24in'), around(5))!.orientation).toBe(
      'landscape',
    );
  });

  it('tells margins that leave nothing', () => {
    expect(leavesNoRoom(parsePaper('a6'), around(52.5))).toBe(true);
    expect(leavesNoRoom(parsePaper('a6'), around(52))).toBe(false);
    expect(leavesNoRoom(parsePaper('roll:50mm'), around(25))).toBe(true);
  });
});
