import { describe, expect, it } from 'vitest';
import type { Outcome, Severity } from '../../src/checks/finding.ts';
import { statusOf } from '../../src/reports/status.ts';
import { summarise } from '../../src/reports/summary.ts';

const passed: Outcome = { check: 'a', status: 'passed' };
const skipped: Outcome = { check: 'b', status: 'skipped', reason: 'not known' };
const broken: Outcome = { check: 'c', status: 'broken', error: 'ours' };
const found = (...severities: Severity[]): Outcome => ({
  check: 'd',
  status: 'found',
  findings: severities.map((severity) => ({ code: 'e', severity, facts: {} })),
});

describe('statusOf', () => {
  it.each<[expected: string, outcomes: Outcome[]]>([
    ['ready', [passed]],
    ['ready', [passed, skipped]],
    ['ready', [found('advice')]],
    ['look', [passed, found('advice', 'warning')]],
    ['look', [passed, broken]],
    ['look', [found('advice'), broken]],
    ['look', []],
    ['look', [skipped]],
    ['stop', [found('advice', 'warning', 'error')]],
    ['stop', [broken, found('error')]],
    ['stop', [found('warning'), found('error')]],
  ])('is %s', (expected, outcomes) => {
    expect(statusOf(outcomes)).toBe(expected);
    expect(statusOf(outcomes.toReversed())).toBe(expected);
  });
});

describe('summarise', () => {
  it('counts every verdict once', () => {
    const results = (['ready', 'look', 'ready', 'stop', 'unreadable', 'ready'] as const).map((status) => ({
      status,
    }));
    expect(summarise(results, 4)).toEqual({
      artworks: 6,
      ready: 3,
      look: 1,
      stop: 1,
      unreadable: 1,
      passedOver: 4,
    });
  });

  it('of nothing is nothing', () => {
    expect(summarise([], 0)).toEqual({
      artworks: 0,
      ready: 0,
      look: 0,
      stop: 0,
      unreadable: 0,
      passedOver: 0,
    });
  });
});
