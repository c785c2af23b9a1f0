import { describe, expect, it } from 'vitest';
import { writePdfDrawing } from '../../src/formats/pdf-drawing.ts';
import { pdfText, writePdfNumber } from '../../src/formats/pdf-objects.ts';

const BLACK = { r: 0, g: 0, b: 0 };
const inksOf = (r: number, g: number, b: number) =>
  writePdfDrawing(
    [{ kind: 'rect', rectMm: { x: 0, y: 0, width: 1, height: 1 }, colour: { r, g, b } }],
    'cmyk',
  )
    .split(' sc ')[0]!
    .split(' ')
    .map(Number);

describe('writePdfDrawing', () => {
  it('draws lines with flat ends of their width, dashed or whole, and boxes', () => {
    const from = { x: 1, y: 2 };
    const to = { x: 3, y: 2.5 };
    expect(writePdfDrawing([{ kind: 'line', from, to, widthMm: 0.2, colour: BLACK }], 'rgb')).toBe(
      '0 0 0 SC 0.2 w [] 0 d 1 2 m 3 2.5 l S',
    );
    const dashed = { kind: 'line', from, to, widthMm: 0.2, colour: BLACK, dashesMm: [2, 1] } as const;
    expect(writePdfDrawing([dashed], 'rgb')).toContain('[2 1] 0 d');
    expect(writePdfDrawing([], 'rgb')).toBe('');
  });

  it('makes of a quadratic curve the cubic one through the same points (derived)', () => {
    const path = [['M', 0, 0], ['Q', 3, 6, 9, 3], ['Z']] as const;
    const [, numbers] = /m ([\d. ]+) c/.exec(
      writePdfDrawing([{ kind: 'path', path, colour: BLACK }], 'rgb'),
    )!;
    const [x1, y1, x2, y2, x3, y3] = numbers!.split(' ').map(Number) as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    for (const t of [0.1, 0.5, 0.8]) {
      const s = 1 - t;
      const quadratic = [2 * s * t * 3 + t * t * 9, 2 * s * t * 6 + t * t * 3];
      const cubic = [
        3 * s * s * t * x1 + 3 * s * t * t * x2 + t ** 3 * x3,
        3 * s * s * t * y1 + 3 * s * t * t * y2 + t ** 3 * y3,
      ];
      expect(cubic[0]).toBeCloseTo(quadratic[0]!, 5);
      expect(cubic[1]).toBeCloseTo(quadratic[1]!, 5);
    }
  });

  it('gives black and grays to one ink, and each pure ink to itself', () => {
    expect(inksOf(0, 0, 0)).toEqual([0, 0, 0, 1]);
    expect(inksOf(255, 255, 255)).toEqual([0, 0, 0, 0]);
    expect(inksOf(51, 51, 51)).toEqual([0, 0, 0, 0.8]);
    expect(inksOf(0, 255, 255)).toEqual([1, 0, 0, 0]);
    expect(inksOf(255, 0, 255)).toEqual([0, 1, 0, 0]);
    expect(inksOf(255, 255, 0)).toEqual([0, 0, 1, 0]);
  });
});

describe('what a PDF is made of', () => {
  it('writes numbers with all their digits and never with an exponent', () => {
    expect(writePdfNumber(595.2755905511812)).toBe('595.2755905511812');
    expect(Number(writePdfNumber(1e-7))).toBeCloseTo(1e-7, 20);
    expect(writePdfNumber(1e-7)).not.toContain('e');
    expect(writePdfNumber(-0)).toBe('0');
    expect(() => writePdfNumber(Number.NaN)).toThrow('finite');
  });

  it('writes text as UTF-16, so that no character needs care', () => {
    expect(pdfText('a)é')).toBe('<FEFF0061002900E9>');
  });
});
