import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import {
  formatLength,
  formatSize,
  parseLength,
  parseNonNegativeLength,
  parsePositiveLength,
  tellComma,
} from '../../src/geometry/length.ts';
import { looksLikeSize, parseOffset, parseSize } from '../../src/geometry/size.ts';

const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof BlankcheckError) return error.code;
    throw error;
  }
  return 'none';
};

describe('parseLength', () => {
  it.each([
    ['178mm', 178],
    ['17.8cm', 178],
    ['7in', 177.8],
    ['7"', 177.8],
    ['36pt', 12.7],
    [' .5 IN ', 12.7],
    ['-1mm', -1],
  ])('%s is %d mm', (text, mm) => expect(parseLength(text, '--width')).toBeCloseTo(mm, 12));

  it.each(['', 'mm', '5ft', '1e3mm', '1,5mm', '--5mm', '5 5mm', 'NaNmm'])('refuses %j', (text) =>
    expect(codeOf(() => parseLength(text, '--width'))).toBe('bad-length'),
  );

  it('a bare number is refused with both readings', () => {
    expect(codeOf(() => parseLength('200', '--width'))).toBe('length-without-unit');
    expect(() => parseLength('200', '--width')).toThrow(/200mm \(7\.87 in\).*200in \(5080 mm\)/);
  });

  it('zero and below only where they mean something', () => {
    expect(codeOf(() => parsePositiveLength('0mm', '--width'))).toBe('bad-length');
    expect(parseNonNegativeLength('0mm', '--bleed')).toBe(0);
    expect(codeOf(() => parseNonNegativeLength('-1mm', '--bleed'))).toBe('bad-length');
  });

  it('never throws anything else', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(['none', 'bad-length', 'length-without-unit']).toContain(codeOf(() => parseLength(text, 'x')));
      }),
      { seed: 6 },
    );
  });
});

describe('parseSize', () => {
  it.each([
    ['200x150mm', 'rect', 200, 150],
    ['8x10in', 'rect', 203.2, 254],
    ['8inx10in', 'rect', 203.2, 254],
    ['20cm x 150mm', 'rect', 200, 150],
    ['round:95mm', 'round', 95, 95],
  ])('%s', (text, kind, widthMm, heightMm) => {
    const size = parseSize(text, '--blank');
    expect(size.kind).toBe(kind);
    expect(size.widthMm).toBeCloseTo(widthMm, 12);
    expect(size.heightMm).toBeCloseTo(heightMm, 12);
  });

  it.each([
    ['200x150', 'length-without-unit'],
    ['round:95', 'length-without-unit'],
    ['round:', 'bad-length'],
    ['0x5mm', 'bad-length'],
    ['tile', 'bad-size'],
    ['5x5x5mm', 'bad-size'],
    ['200,5x200mm', 'bad-size'],
    ['round:95,5mm', 'bad-length'],
  ])('refuses %s as %s', (text, code) => expect(codeOf(() => parseSize(text, '--blank'))).toBe(code));

  it('tells a size from a catalogue id', () => {
    expect(['200x200mm', '8x10', 'round:3in', '8x10ft', '200,5x200mm'].every(looksLikeSize)).toBe(true);
    expect(['tile-ceramic-6x8in', 'mug-11oz', './10x10.json'].some(looksLikeSize)).toBe(false);
  });
});

describe('parseOffset', () => {
  it('reads right and down', () => expect(parseOffset('2mm,-1mm', '--offset')).toEqual({ x: 2, y: -1 }));
  it.each(['2mm', '2mm,1mm,1mm', '2,5mm', '-2,5 in'])('refuses %s', (text) =>
    expect(codeOf(() => parseOffset(text, '--offset'))).toBe('bad-offset'),
  );
});

describe('lengths for people', () => {
  it.each([
    [200, '200 mm (7.87 in)'],
    [177.8, '177.8 mm (7 in)'],
    [0, '0 mm (0 in)'],
    [0.04, '0.04 mm (0.0016 in)'],
    [-1.25, '-1.3 mm (-0.049 in)'],
  ])('%d', (mm, text) => expect(formatLength(mm)).toBe(text));
  it('sizes', () => expect(formatSize(203.2, 254)).toBe('203.2 x 254 mm (8 x 10 in)'));
});

describe('what people type', () => {
  it.each([
    ['7 inches', 177.8],
    ['7inch', 177.8],
  ])('%s', (text, mm) => expect(parseLength(text, '--width')).toBeCloseTo(mm, 12));

  it('a decimal comma is refused with its mend', () =>
    expect(() => parseLength('7,5in', '--width')).toThrow(/comma/));

  it.each([
    ['7,5in', '7.5in'],
    ['1.234,5mm', '1234.5mm'],
    ['12.345.678,5mm', '12345678.5mm'],
    ['2,5mm,-1,25mm', '2.5mm,-1.25mm'],
    ['60.5x45,5mm', '60.5x45.5mm'],
  ])('of %s the mend is %s', (text, mended) => expect(tellComma(text)).toContain(` ${mended}.`));
  it('of a size without a comma there is none', () => expect(tellComma('60.5x45.5mm')).toBe(''));

  it('a bare number for a size is refused with both readings', () => {
    expect(codeOf(() => parseSize('48', '--measured'))).toBe('length-without-unit');
    expect(() => parseSize('48', '--measured')).toThrow(
      /48x48mm.*1\.89 x 1\.89 in.*48x48in.*1219\.2 x 1219\.2 mm/,
    );
    expect(() => parseSize('8x10', '--blank')).toThrow(/8x10mm.*8x10in.*203\.2 x 254 mm/);
    expect(looksLikeSize('200')).toBe(true);
  });
});
