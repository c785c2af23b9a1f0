import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { judgeRulers } from '../../src/printers/judge-rulers.ts';
import { readPrinter } from '../../src/printers/read-printer.ts';

async function printerOf(paper: string, margin: number, scan = 1, feed = 1) {
  const marginsMm = { left: margin, right: margin, lead: margin, trail: margin };
  return readPrinter(JSON.stringify({ name: 'a', paper, marginsMm, scaleCorrection: { scan, feed } }), 'a');
}
const letter = await printerOf('letter', 3.4);
const codeOf = (x: number, y: number, printer = letter) =>
  judgeRulers(printer, { measuredMm: { x, y } }).code;

describe('judgeRulers', () => {
  // Derived: min((W - 2m) / W, (H - 2m) / H), and the smaller ratio of sides for page on page (ISO 216, ANSI/ASME Y14.1).
  it.each([
    ['letter', 3.4, 96.85, 'margins', 'letter'],
    ['a4', 4.2, 96.0, 'margins', 'a4'],
    ['letter', 6.35, 94.12, 'margins', 'letter'],
    ['a4', 3, 94.07, 'paper', 'letter'],
    ['letter', 3, 97.27, 'paper', 'a4'],
  ])('%s with margins of %d mm at %d %% is fitted', async (paper, margin, percent, kind, sheet) => {
    const printer = await printerOf(paper, margin);
    const verdict = judgeRulers(printer, { measuredMm: { x: percent, y: percent } });
    expect(verdict.code).toBe('fit-to-page');
    expect(verdict.explanation).toMatchObject({ kind, sheet });
    expect(verdict.explanation!.factor * 100).toBeCloseTo(percent, 2);
    expect(verdict.scaleCorrection).toEqual({ scan: 1, feed: 1 });
  });

  it.each([
    [100, 100, 'exact'],
    [100, 99.6, 'corrected'],
    [100.99, 99.01, 'corrected'],
    [99.01, 99.01, 'corrected'],
    [101, 101, 'borderless'],
    [103, 102, 'borderless'],
    [103.01, 102, 'implausible'],
    [101, 100.99, 'implausible'],
    [99, 100, 'implausible'],
    [100, 101, 'implausible'],
    [96.85, 100, 'implausible'],
    [96.85, 99.9, 'implausible'],
    [100, 96.85, 'implausible'],
    [103, 97, 'implausible'],
    // 209.1 / 215.9 = 0.968504: fitted within 0.3 %.
    [96.56, 97.14, 'fit-to-page'],
    [96.55, 96.85, 'implausible'],
    [50, 50, 'implausible'],
    [150, 150, 'implausible'],
  ])('%d and %d of 100 mm: %s', (x, y, code) => expect(codeOf(x, y)).toBe(code));

  it.each([0, -1, 49.99, 150.01, 500, Number.NaN, Number.POSITIVE_INFINITY])(
    'refuses a reading of %d mm',
    (mm) => {
      for (const measuredMm of [
        { x: mm, y: 100 },
        { x: 100, y: mm },
      ])
        expect(() => judgeRulers(letter, { measuredMm })).toThrowError(
          expect.objectContaining({ code: 'bad-ruler', constructor: BlankcheckError }),
        );
    },
  );

  it('refuses a ruler without length', () => {
    const call = () => judgeRulers(letter, { measuredMm: { x: 1, y: 1 }, nominalMm: { x: 0, y: 1 } });
    expect(call).toThrowError(expect.objectContaining({ code: 'bad-ruler' }));
  });

  it('measures each ruler by its own length', () => {
    const verdict = judgeRulers(letter, { measuredMm: { x: 80, y: 60.6 }, nominalMm: { x: 80, y: 60 } });
    expect(verdict.code).toBe('implausible');
    expect(verdict.deviationPercent).toEqual({ x: 0, y: 1 });
  });

  it('takes the correction in force into account, and stops small steps from adding up', async () => {
    const printer = await printerOf('letter', 3.4, 1, 1.004);
    const again = judgeRulers(printer, { measuredMm: { x: 100, y: 99.9 } });
    expect(again).toMatchObject({ code: 'corrected', scaleCorrection: { scan: 1, feed: 1.005005 } });
    expect(codeOf(100, 99.3, printer)).toBe('implausible');
  });

  // Law: a printer that makes f of what it is given, drawn with the stored factor, prints the nominal length.
  it('stores what makes the ruler right, whatever was in force', () => {
    const small = fc.double({ min: 0.9955, max: 1.0045, noNaN: true });
    fc.assert(
      fc.property(small, small, small, small, (fx, fy, scan, feed) => {
        const printer = { ...letter, scaleCorrection: { scan, feed } };
        const { code, scaleCorrection } = judgeRulers(printer, {
          measuredMm: { x: 100 * scan * fx, y: 100 * feed * fy },
        });
        fc.pre(code === 'corrected');
        // A correction has six decimals: half a thousandth of a millimetre on a metre.
        expect(Math.abs(scaleCorrection.scan * fx - 1)).toBeLessThan(6e-7);
        expect(Math.abs(scaleCorrection.feed * fy - 1)).toBeLessThan(6e-7);
      }),
    );
  });
});
