import { describe, expect, it } from 'vitest';
import { exitCodeOf, type FailOn, type RunEnd } from '../../cli/exit-code.ts';
import type { ArtworkReport, Outcome, Severity } from '../../src/index.ts';

const found = (...severities: Severity[]): Outcome => ({
  check: 'safe-area',
  status: 'found',
  findings: severities.map((severity) => ({ code: 'too-close', severity, facts: {} })),
});
const result = (outcomes: Outcome[], more: Partial<ArtworkReport> = {}) =>
  ({ status: 'ready', error: null, proofError: null, outcomes, ...more }) as ArtworkReport;
const codeOf = (end: Partial<RunEnd>) =>
  exitCodeOf({ results: [], failOn: 'error', usageErrors: 0, faults: 0, interruptedBy: null, ...end });

describe('findings', () => {
  const limits: FailOn[] = ['advice', 'warning', 'error', 'never'];
  it.each<[Severity, number[]]>([
    ['advice', [1, 0, 0, 0]],
    ['warning', [1, 1, 0, 0]],
    ['error', [1, 1, 1, 0]],
  ])('%s', (severity, codes) => {
    const results = [result([]), result([{ check: 'pages', status: 'passed' }, found(severity)])];
    expect(limits.map((failOn) => codeOf({ results, failOn }))).toEqual(codes);
  });

  it('none, or only what was skipped, is clean', () => {
    expect(codeOf({})).toBe(0);
    expect(
      codeOf({
        results: [result([{ check: 'pages', status: 'skipped', reason: 'unknown' }])],
        failOn: 'advice',
      }),
    ).toBe(0);
  });

  it('the worst of many counts', () => {
    expect(codeOf({ results: [result([found('advice', 'error', 'advice')]), result([])] })).toBe(1);
  });
});

describe('what no --fail-on forgives', () => {
  const error = { code: 'damaged', message: 'cut short' };
  it.each<[string, Partial<RunEnd>, number]>([
    ['unreadable', { results: [result([], { status: 'unreadable', error })] }, 1],
    ['not written', { results: [result([], { error: { code: 'file-exists', message: 'taken' } })] }, 1],
    [
      'a proof not written',
      { results: [result([], { proofError: { code: 'file-exists', message: 'taken' } })] },
      1,
    ],
    ['usage', { usageErrors: 1 }, 2],
    ['a fault', { faults: 1 }, 3],
    ['a broken check', { results: [result([{ check: 'pages', status: 'broken', error: 'oops' }])] }, 3],
    ['Ctrl-C', { interruptedBy: 'SIGINT' }, 130],
    ['termination', { interruptedBy: 'SIGTERM' }, 143],
    ['a closed terminal', { interruptedBy: 'SIGHUP' }, 129],
  ])('%s', (_, end, code) => expect(codeOf({ failOn: 'never', ...end })).toBe(code));

  it('interruption goes before faults, faults before usage, usage before findings', () => {
    const results = [result([found('error')])];
    expect(codeOf({ results, usageErrors: 1 })).toBe(2);
    expect(codeOf({ results, usageErrors: 1, faults: 1 })).toBe(3);
    expect(codeOf({ results, usageErrors: 1, faults: 1, interruptedBy: 'SIGINT' })).toBe(130);
  });
});
