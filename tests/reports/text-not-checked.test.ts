import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/checks/finding.ts';
import type { ArtworkReport } from '../../src/reports/report.ts';
import { renderNotChecked } from '../../src/reports/text-not-checked.ts';
import { renderTextReport } from '../../src/reports/text-report.ts';
import { CLEAN } from './nasty-findings.ts';

const PAGE = { colour: false, width: 100 } as const;
const FLAT: Outcome[] = [
  { check: 'taper', status: 'skipped', reason: 'flat' },
  { check: 'seam-match', status: 'skipped', reason: 'flat' },
];
const PLAIN: Outcome = { check: 'true-detail', status: 'skipped', reason: 'too plain' };
const report = (path: string, outcomes: readonly Outcome[]): ArtworkReport => ({
  ...CLEAN,
  artwork: { ...CLEAN.artwork, path },
  outcomes,
});
const lines = (results: readonly ArtworkReport[]) => renderNotChecked(results, PAGE).split('\n').slice(1, -1);

describe('what was not checked in a run', () => {
  it('is told once with whom it holds for: all that could be judged, by name, or the first and how many', () => {
    const two = [report('a.png', [...FLAT, PLAIN]), report('b.png', FLAT), report('broken.png', [])];
    expect(lines(two)).toEqual([
      '  [?] taper, seam-match: flat (all that could be read)',
      '  [?] true-detail: too plain (a.png)',
    ]);
    expect(lines(two.slice(0, 2))[0]).toMatch(/\(all of them\)$/);
    const four = ['a', 'b', 'c', 'd'].map((path) => report(path, [PLAIN]));
    expect(lines([...four, report('e', [{ check: 'true-detail', status: 'passed' }])])).toEqual([
      '  [?] true-detail: too plain (4 of them, the first a)',
    ]);
  });

  it('keeps apart what was skipped in other artworks, or for another reason', () => {
    const [taper, seam] = FLAT as [Outcome, Outcome];
    expect(lines([report('a', [taper, seam]), report('b', [taper])])).toHaveLength(2);
    expect(lines([report('a', [taper, { ...seam, reason: 'clear' } as Outcome])])).toHaveLength(2);
  });

  it('is nothing where all was checked', () => expect(renderNotChecked([CLEAN], PAGE)).toBe(''));

  it('leaves its number in a report in brief, and its names where it is not told apart', () => {
    const short = (notCheckedApart: boolean) =>
      renderTextReport(report('a', [...FLAT, PLAIN]), { ...PAGE, brief: true, notCheckedApart });
    expect(short(true)).toContain('3 of 3');
    expect(short(true)).not.toContain('taper');
    expect(short(false)).toContain('taper, seam-match, true-detail');
  });

  it('shows what is hidden in names', () => {
    const text = renderNotChecked([report('a\u001b[2J', [PLAIN]), report('b', [])], PAGE);
    expect(text).not.toContain('\u001b');
    const named = renderNotChecked([report('a\u202eb', [PLAIN]), report('b', FLAT)], PAGE);
    expect(named).toContain('a\\u202eb');
  });
});
