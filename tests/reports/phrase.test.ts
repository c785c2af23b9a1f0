import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/checks/index.ts';
import { phraseFinding } from '../../src/reports/phrase.ts';
import { SHORT, STAND_IN_CHECKS } from './nasty-findings.ts';

describe('phraseFinding', () => {
  it('takes the phrase of the check and code', () => {
    expect(phraseFinding('bleed-cover', SHORT, STAND_IN_CHECKS)).toMatch(
      /^The art runs over the edge at the top /,
    );
  });

  it.each([
    ['a check that is not in the list', 'elsewhere', 'short'],
    ['a code without a phrase', 'bleed-cover', 'unheard-of'],
    ['a phrase that throws', 'safe-area', 'failing'],
    ['a code that every object answers to', 'bleed-cover', 'toString'],
  ])('shows code and numbers for %s', (_, check, code) => {
    expect(phraseFinding(check, { ...SHORT, code }, STAND_IN_CHECKS)).toBe(
      `${check}/${code}: 1.2000000000000002 mm; expected at least 3 mm, set by blank:tile-ceramic-8in; side top`,
    );
  });

  it('shows a limit on both sides, and nothing where nothing was measured', () => {
    const expected = { min: 2, max: 0.1 + 0.2, unit: 'percent', from: 'practice:a' } as const;
    const finding = { code: 'b', severity: 'advice', facts: {} } as const;
    expect(phraseFinding('a', { ...finding, expected }, [])).toBe(
      'a/b: expected at least 2 and at most 0.3 percent, set by practice:a',
    );
    expect(phraseFinding('a', finding, [])).toBe('a/b');
  });
});

describe('phrase tables', () => {
  it.each(CHECKS.map((check) => [check.id, check] as const))(
    '%s has one phrase for each of its codes',
    (_, check) => {
      expect(Object.keys(check.phrases).sort()).toEqual(Object.keys(check.codes).sort());
    },
  );
});
