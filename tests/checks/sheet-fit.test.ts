import { describe, expect, it } from 'vitest';
import type { PrintRequest } from '../../src/check-artwork.ts';
import { growSector } from '../../src/geometry/sector.ts';
import { phraseFinding } from '../../src/reports/phrase.ts';
import { parsePaper } from '../../src/sheet/parse-paper.ts';
import { GREEN, paintRaster, WHITE } from '../pictures.ts';
import { blankOf, codesOf, findingsOf, outcomesOf, PLATE, subjectOf } from './jobs.ts';

const art = paintRaster(400, 400, () => GREEN);
const onSheet = (sheet: string, request: Partial<PrintRequest> = {}) =>
  outcomesOf(art, { fit: 'cover', sheet: parsePaper(sheet), ...request });
const codes = (sheet: string, request: Partial<PrintRequest> = {}) =>
  codesOf(onSheet(sheet, request)).filter((code) => code.startsWith('sheet-fit'));
const statusOf = (outcomes: ReturnType<typeof outcomesOf>) =>
  outcomes.find(({ check }) => check === 'sheet-fit');

// 100 mm and twice 3 mm of bleed are inked; an unknown printer leaves 6.35 mm bare on every side: 118.7 mm.
describe('sheet-fit', () => {
  it('passes at the size that just takes the piece, and finds a tenth of a millimetre less', () => {
    expect(codes('118.7x300mm')).toEqual([]);
    expect(codes('118.8x300mm')).toEqual([]);
    expect(codes('118.6x300mm')).toEqual(['sheet-fit/too-large:error']);
    expect(codes('118.6x118.6mm')).toEqual(['sheet-fit/too-large:error']);
  });

  it("takes the margins of the printer's record", () => {
    const printer = {
      name: 'shed printer',
      paper: { id: 'a4', widthMm: 210, heightMm: 297 },
      marginsMm: { left: 2, right: 3, lead: 2, trail: 10 },
      scaleCorrection: { scan: 1, feed: 1 },
      driverMirrors: false,
    };
    expect(codes('111x118mm', { printer })).toEqual([]);
    expect(codes('110.9x118mm', { printer })).toEqual(['sheet-fit/too-large:error']);
    expect(codes('111x117.9mm', { printer })).toEqual(['sheet-fit/too-large:error']);
    expect(() =>
      codes('50x60mm', { printer: { ...printer, marginsMm: { left: 30, right: 30, lead: 30, trail: 30 } } }),
    ).toThrow(expect.objectContaining({ code: 'margins-too-large' }));
  });

  it('names the smallest sheets of both families that would do, and a roll', () => {
    const [found] = findingsOf(onSheet('a6', { blank: { ...PLATE, bleedMm: 4 } }), 'sheet-fit');
    expect(found).toMatchObject({
      code: 'too-large',
      facts: {
        sheet: 'a6',
        widthMm: 108,
        smallestIso: 'a5',
        smallestInch: 'letter',
        smallestRoll: 'roll-8.5in',
      },
    });
    expect(phraseFinding('sheet-fit', found!)).toContain('a5 or letter');
  });

  it('says when only a roll takes it, and when nothing does', () => {
    const facts = (side: number) =>
      findingsOf(
        onSheet('a4', {
          ppi: 72,
          blank: { ...PLATE, outline: { shape: 'rect', widthMm: side, heightMm: side } },
        }),
        'sheet-fit',
      )[0]!.facts;
    expect(facts(500)).toMatchObject({ smallestRoll: 'roll-24in' });
    expect(facts(500)).not.toHaveProperty('smallestIso');
    expect(facts(2000)).not.toHaveProperty('smallestRoll');
  });

  it('counts what is inked, not white padding: small art on a large blank needs little paper', () => {
    expect(codes('a6', { fit: 'inside', widthMm: 60 })).toEqual([]);
    const framed = paintRaster(400, 400, (x, y) => (x > 50 && x < 350 && y > 50 && y < 350 ? GREEN : WHITE));
    expect(statusOf(outcomesOf(framed, { widthMm: 106, sheet: parsePaper('a6') }))).toMatchObject({
      status: 'passed',
    });
    // A background that is not white is ink up to the bleed line.
    const background = { r: 20, g: 90, b: 40, alpha: 1 } as const;
    expect(codes('a6', { widthMm: 60, background })).toEqual(['sheet-fit/too-large:error']);
  });

  it('counts no art beyond the bleed line', () => {
    expect(codes('118.7x300mm', { widthMm: 140 })).toEqual([]);
  });

  it('is skipped without a sheet, and where nothing is printed', () => {
    expect(statusOf(outcomesOf(art))).toMatchObject({ status: 'skipped' });
    const white = paintRaster(10, 10, () => WHITE);
    expect(statusOf(outcomesOf(white, { sheet: parsePaper('a6') }))).toMatchObject({ status: 'skipped' });
    expect(subjectOf(white).page).toBeNull();
  });
});

// Second way: the rim of the arc in a thousand points, each put on the page by itself.
describe('sheet-fit of an arc', () => {
  const request = {
    blank: blankOf('tumbler-20oz-tapered'),
    wrap: { kind: 'around' },
    sheet: parsePaper('a2'),
  } as const;
  const { job, page } = subjectOf(art, request);
  const sector = growSector(job!.blank.wrap!.development.sector!, job!.blank.bleed.value);
  const rim = Array.from({ length: 1001 }, (_, i) => (i / 1000 - 0.5) * sector.angleRad).flatMap((angle) =>
    [sector.innerRadiusMm, sector.outerRadiusMm].map((radius) => ({
      x: radius * Math.sin(angle),
      y: radius * Math.cos(angle),
    })),
  );
  const spanOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const wide = spanOf(rim.map(({ x }) => x));
  const high = spanOf(rim.map(({ y }) => y));
  const bare = 2 * 6.35;
  const codesAt = (widthMm: number, heightMm: number) =>
    codesOf(
      outcomesOf(art, { ...request, sheet: parsePaper(`${widthMm.toFixed(3)}x${heightMm.toFixed(3)}mm`) }),
    ).filter((code) => code.startsWith('sheet-fit'));

  it('has the box of its true outline', () => {
    expect(page!.printedMm!.width).toBeCloseTo(wide, 1);
    expect(page!.printedMm!.height).toBeCloseTo(high, 1);
  });

  it('takes the page that the outline just fits, held either way, and none a tenth of a millimetre smaller', () => {
    const [least, most] = [wide + bare, high + bare];
    expect(codesAt(least + 0.05, most + 0.05)).toEqual([]);
    expect(codesAt(most + 0.05, least + 0.05)).toEqual([]);
    expect(codesAt(least - 0.1, most + 0.05)).toEqual(['sheet-fit/too-large:error']);
    expect(codesAt(least + 0.05, most - 0.1)).toEqual(['sheet-fit/too-large:error']);
  });
});
