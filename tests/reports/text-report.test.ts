import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { ArtworkReport } from '../../src/reports/report.ts';
import { renderTextReport, type TextReportOptions } from '../../src/reports/text-report.ts';
import { expectGolden } from '../golden.ts';
import { CLEAN, NASTY_REPORTS, STAND_IN_CHECKS } from './nasty-findings.ts';
import { findSteering } from './steering.ts';

const PLAIN = { colour: false, width: 80, checks: STAND_IN_CHECKS } as const;
const NAMES = Object.keys(NASTY_REPORTS) as (keyof typeof NASTY_REPORTS)[];

/** Columns by construction: the wide characters of the nasty set are these scripts and one joined emoji. */
function columnsOf(line: string): number {
  const segments = [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(line)];
  const wide =
    /^(?:\p{Script=Han}|\p{Script=Hangul}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Emoji_Presentation})/u;
  return segments.reduce((columns, { segment }) => columns + (wide.test(segment) ? 2 : 1), 0);
}

const render = (report: ArtworkReport, options: Partial<TextReportOptions> = {}) =>
  renderTextReport(report, { ...PLAIN, ...options });

const inOneLine = (text: string) => text.replace(/\s+/g, ' ');

describe('text report', () => {
  it.each(NAMES)('%s reads as it did', (name) => {
    expectGolden(`reports/${name}.txt`, render(NASTY_REPORTS[name]));
  });

  it.each(['every-severity', 'unreadable'] as const)('%s in brief reads as it did', (name) => {
    expectGolden(`reports/${name}.brief.txt`, render(NASTY_REPORTS[name], { brief: true }));
  });

  it('in brief leaves out notes, never what was not checked, what broke or why nothing was written', () => {
    const outcomes = [
      {
        check: 'safe-area',
        status: 'found',
        findings: [{ code: 'too-close', severity: 'advice', facts: {} }],
      },
      { check: 'pages', status: 'skipped', reason: 'a reason' },
      { check: 'banding', status: 'broken', error: 'a cause' },
    ] as const;
    const text = render(
      { ...CLEAN, outcomes, output: null, error: { code: 'cannot-write', message: 'The disk is full.' } },
      { brief: true },
    );
    expect(text).not.toContain('too-close');
    expect(text).toContain('1 note\n');
    for (const told of ['Not checked: pages', 'banding', 'a cause', '(cannot-write)'])
      expect(text).toContain(told);
  });

  it('in colour and step by step reads as it did', () => {
    const report = NASTY_REPORTS['every-severity'];
    expectGolden('reports/every-severity.ansi', renderTextReport(report, { ...PLAIN, colour: true }));
    expectGolden('reports/cut-art.dry-run.txt', render(NASTY_REPORTS['cut-art'], { showPlan: true }));
  });

  it('shows what is hidden in the names of profiles that a plan tells', () => {
    const plan = [{ step: 'convert', from: 'a\u001b[2J\u202eb' }] as const;
    const text = render({ ...NASTY_REPORTS['cut-art'], plan }, { showPlan: true });
    expect(findSteering(text)).toEqual([]);
    expect(text).toContain('a\\u001b[2J\\u202eb');
  });

  it.each(NAMES)('%s says the same without its colours', (name) => {
    const coloured = renderTextReport(NASTY_REPORTS[name], { ...PLAIN, colour: true });
    expect(coloured).not.toBe(render(NASTY_REPORTS[name]));
    expect(stripVTControlCharacters(coloured)).toBe(render(NASTY_REPORTS[name]));
  });

  it.each([40, 57, 80, 100])('keeps to %i columns, save a path to copy', (width) => {
    for (const name of NAMES) {
      const report: ArtworkReport = NASTY_REPORTS[name];
      const text = renderTextReport(
        { ...report, output: report.output && { ...report.output, path: 'p' } },
        { ...PLAIN, width },
      );
      expect(
        text.split('\n').filter((line) => columnsOf(line) > width),
        name,
      ).toEqual([]);
    }
  });

  it('ends no line between a number and its unit, at any width', () => {
    const facts = {
      side: 'left 12.1 mm (0.48 in), right 4.8 mm (0.19 in), 1200 x 900 px at 300 ppi of 100 %',
    };
    const outcomes = [
      { check: 'safe-area', status: 'found', findings: [{ code: 'too-close', severity: 'warning', facts }] },
    ] as const;
    for (let width = 40; width <= 100; width += 1) {
      const text = render({ ...CLEAN, outcomes }, { width });
      expect(text).not.toMatch(/\d\n\s*(?:mm|in|px|ppi|%|x \d)|\d x\n/);
      expect(inOneLine(text)).toContain(facts.side);
    }
  });

  it.each([0, 1, -3, Number.NaN, 5000])('sets a readable page in %d columns', (width) => {
    const widest = Math.max(
      ...renderTextReport(NASTY_REPORTS.unreadable, { ...PLAIN, width })
        .split('\n')
        .map(columnsOf),
    );
    expect(widest).toBeGreaterThan(30);
    expect(widest).toBeLessThanOrEqual(100);
  });

  it.each(NAMES)('%s cannot steer a terminal', (name) => {
    expect(findSteering(render(NASTY_REPORTS[name]))).toEqual([]);
  });

  it('begins with the verdict and the name, in one line', () => {
    const first = (name: keyof typeof NASTY_REPORTS) => render(NASTY_REPORTS[name]).split('\n')[0];
    expect(first('clean')).toBe('READY TO PRINT: plant-sale/pear.png');
    expect(first('every-severity')).toContain('STOP: plant-sale/pear.png');
    expect(first('broken')).toContain('LOOK FIRST: plant-sale/pear.png');
    expect(first('unreadable')).toBe('CANNOT READ: plant-sale/torn.png');
  });

  it('tells errors before warnings before advice, and within one severity keeps the order of the checks', () => {
    const marks = render(NASTY_REPORTS['every-severity']).match(/\[[x!i]\] \w+|\([a-z-]+\/[a-z-]+/g);
    expect(marks).toEqual([
      '[x] STOP',
      '(effective-resolution/below-stop',
      '[x] STOP',
      '(bleed-cover/short',
      '[x] STOP',
      '(bleed-cover/short',
      '[!] LOOK',
      '(pages/more-than-one',
      '[i] NOTE',
      '(effective-resolution/below-good',
    ]);
  });

  it('shows the record that set a limit', () => {
    const text = inOneLine(render(NASTY_REPORTS['every-severity']));
    expect(text).toContain('limit set by family:ceramic-tile');
    expect(text).toContain('limit set by blank:tile-ceramic-8in');
  });

  it('tells five of two hundred like findings and counts the rest', () => {
    const text = render(NASTY_REPORTS['two-hundred']);
    expect(text.match(/\(safe-area\/too-close/g)).toHaveLength(5);
    expect(text).toContain('And 195 more');
    expect(text).toContain('200 things');
  });

  it('names every check that did not come to a result', () => {
    for (const name of ['skipped', 'broken', 'nothing-visible'] as const) {
      const text = render(NASTY_REPORTS[name]);
      const notChecked = text.slice(text.indexOf('Not checked'));
      expect(notChecked).toMatch(/\[\?\] bleed-cover: /);
    }
    expect(render(CLEAN)).not.toContain('Not checked');
  });

  it('never shows a resolution above the true one', () => {
    expect(render({ ...CLEAN, effectivePpi: { x: 149.9999, y: 149.9999 } })).toContain('149.9 ppi');
    expect(render({ ...CLEAN, effectivePpi: { x: 149.99999999999997, y: 150 } })).toContain(' 150 ppi');
  });

  it('asks for the ruler only where all of the art is on the blank', () => {
    expect(inOneLine(render(CLEAN))).toContain('the printed part must be 177.8 mm (7 in) wide');
    for (const inkedMm of [
      { x: -0.1, y: 0, width: 100, height: 100 },
      { x: 0, y: -0.1, width: 100, height: 100 },
      { x: 100.1, y: 0, width: 100, height: 100 },
      { x: 0, y: 100.1, width: 100, height: 100 },
    ])
      expect(render({ ...CLEAN, inkedMm })).not.toContain('ruler');
  });
});
