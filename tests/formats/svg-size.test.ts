import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSvgLength, parseViewBox, readSvgSize } from '../../src/formats/svg-size.ts';

describe('lengths (CSS Values 4, 6.2): 96 px an inch', () => {
  it.each([
    ['96', 96],
    ['96px', 96],
    ['1in', 96],
    ['2.54cm', 96],
    ['25.4mm', 96],
    ['101.6Q', 96],
    ['72pt', 96],
    ['6pc', 96],
    ['6em', 96],
    ['1e2', 100],
    [' .5IN ', 48],
    ['+1.px', 1],
  ])('%s is %d px', (text, px) => {
    expect(parseSvgLength(text)).toBeCloseTo(px, 10);
  });

  it.each([undefined, '', 'auto', '12 parsecs', 'px', '1.2.3', '10vw', '50%', 'NaN', '&w;', '0x10'])(
    '%s is no length',
    (text) => {
      expect(parseSvgLength(text)).toBe(null);
    },
  );

  it('takes a percentage of what is given', () => {
    expect(parseSvgLength('50%', 300)).toBe(150);
  });
});

describe('view box', () => {
  it.each([
    ['0 0 100 50', { x: 0, y: 0, width: 100, height: 50 }],
    ['-5,-6,1e2\n50', { x: -5, y: -6, width: 100, height: 50 }],
    ['0 0 0 50', null],
    ['0 0 -1 50', null],
    ['0 0 1e300 50', null],
    ['0 0 100', null],
    ['0 0 100 50 9', null],
    ['0 0 100 px', null],
    ['', null],
  ])('%s', (text, box) => {
    expect(parseViewBox(text)).toEqual(box);
  });
});

describe('natural size', () => {
  const sizeOf = (attributes: Record<string, string>) => {
    const { widthPx, heightPx } = readSvgSize(attributes);
    return [widthPx, heightPx];
  };

  it.each([
    [{ width: '200', height: '100' }, [200, 100]],
    [{ width: '1in', height: '50' }, [96, 50]],
    [{ viewBox: '10 10 200 100' }, [200, 100]],
    [{ width: '100%', height: '100%', viewBox: '0 0 200 100' }, [200, 100]],
    [{ width: '50%', height: '100', viewBox: '0 0 200 100' }, [100, 100]],
    [{ width: '100', viewBox: '0 0 200 100' }, [100, 50]],
    [{ height: '100', viewBox: '0 0 200 50' }, [400, 100]],
    [{ width: '0', height: '-4', viewBox: '0 0 200 100' }, [200, 100]],
    [{ width: '300', height: '300', viewBox: '0 0 200 100' }, [300, 300]],
  ])('%o', (attributes, size) => {
    expect(sizeOf(attributes as Record<string, string>)).toEqual(size);
  });

  it.each([
    {},
    { width: '100' },
    { width: '100%', height: '100%' },
    { width: '100', height: '0' },
    { viewBox: '0 0 0 0' },
  ])('%o says none', (attributes) => {
    expect(() => readSvgSize(attributes as Record<string, string>)).toThrow(
      expect.objectContaining({ code: 'drawing-without-size' }),
    );
  });

  it('any attributes give a size above 0 or the one refusal', () => {
    const value = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.double().map(String),
      fc.constantFrom('100%', '1e308', '1e308mm', '0 0 1e308 1e308', '-0'),
    );
    fc.assert(
      fc.property(fc.record({ width: value, height: value, viewBox: value }), (attributes) => {
        try {
          const { widthPx, heightPx } = readSvgSize(attributes);
          expect(widthPx).toBeGreaterThan(0);
          expect(heightPx).toBeGreaterThan(0);
          expect(Number.isFinite(widthPx) && Number.isFinite(heightPx)).toBe(true);
        } catch (error) {
          expect(error).toMatchObject({ code: 'drawing-without-size' });
        }
      }),
      { seed: 5, numRuns: 5000 },
    );
  });
});
