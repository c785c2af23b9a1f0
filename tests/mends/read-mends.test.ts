import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/checks/index.ts';
import { MENDS } from '../../src/mends/index.ts';
import { readMends } from '../../src/mends/read-mends.ts';

const codeOf = (text: string) => {
  try {
    return readMends(text);
  } catch (error) {
    return (error as { code: string }).code;
  }
};

describe('readMends', () => {
  it.each([
    ['into-gamut', ['into-gamut']],
    [' INTO-GAMUT , into-gamut,', ['into-gamut']],
    ['into-gamuts', 'unknown-mend'],
    ['', 'unknown-mend'],
    [',', 'unknown-mend'],
    ['sharpen', 'unknown-mend'],
  ])('"%s"', (text, expected) => expect(codeOf(text)).toEqual(expected));

  it('says which name may have been meant', () => {
    expect(() => readMends('into-gamt')).toThrow(/into-gamut/);
  });
});

describe('the list of mends', () => {
  it('answers only to findings that checks can give, by name', () => {
    const codes = CHECKS.flatMap(({ id, codes: own }) => Object.keys(own).map((code) => `${id}/${code}`));
    for (const { id, answers } of MENDS) {
      expect(answers.length, id).toBeGreaterThan(0);
      expect(codes, id).toEqual(expect.arrayContaining([...answers]));
    }
  });

  it('has each name once', () => {
    expect(new Set(MENDS.map(({ id }) => id)).size).toBe(MENDS.length);
  });
});
