import { describe, expect, it } from 'vitest';
import { parseLimits } from '../../cli/limits.ts';
import { BlankcheckError } from '../../src/index.ts';

const codeOf = (words: readonly string[]): string => {
  try {
    parseLimits(words);
  } catch (error) {
    if (error instanceof BlankcheckError) return `${error.code}: ${error.message}`;
    throw error;
  }
  return 'none';
};

describe('parseLimits', () => {
  it('replaces what is named; the last word counts', () => {
    expect(parseLimits(['maxPixels=400000000', 'maxSeconds=5', 'maxPixels=7'])).toEqual({
      maxPixels: 7,
      maxSeconds: 5,
    });
    expect(parseLimits([])).toEqual({});
  });

  it.each([
    'maxPixels',
    'maxPixels=',
    'maxPixels=0',
    'maxPixels=-1',
    'maxPixels=1e9',
    'maxPixels=1.5',
    'maxPixels=1=2',
    'maxPixels=99999999999999999999',
  ])('refuses %s', (word) => expect(codeOf([word])).toMatch(/^bad-option/));

  it('names the nearest for an unknown one, and takes no name that is not in the table', () => {
    expect(codeOf(['maxPixel=5'])).toMatch(/^bad-option.*maxPixel[\s\S]*maxPixels/);
    expect(codeOf(['toString=5'])).toMatch(/^bad-option/);
  });
});
