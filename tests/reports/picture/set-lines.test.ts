import { describe, expect, it } from 'vitest';
import { measureText } from '../../../src/lettering/measure-text.ts';
import { setLines } from '../../../src/reports/picture/set-lines.ts';

const set = (text: string, width: number, mostLines: number) =>
  setLines(text, { x: 0, y: 0, capitals: 10, width, kind: 'text', mostLines });
const countLines = (markup: string) => markup.match(/<path/g)?.length ?? 0;
const WORDS = 'many small words that go on and on until there is no room left';

describe('lines of outlines', () => {
  it('break between words, as many as are needed, each lower than the one before', () => {
    const whole = measureText(WORDS, 10);
    expect(countLines(set(WORDS, whole + 1, 9).markup)).toBe(1);
    const two = set(WORDS, whole * 0.6, 9);
    expect(countLines(two.markup)).toBe(2);
    expect(two.bottom).toBeGreaterThan(set(WORDS, whole + 1, 9).bottom);
  });

  it('end where the most are reached, and are never wider than their room', () => {
    const width = measureText(WORDS, 10) / 6;
    const { markup } = set(WORDS, width, 3);
    expect(countLines(markup)).toBe(3);
    // Every second number of a path's points is a y.
    const xs = [...markup.matchAll(/[MLQC]([\d. -]+)/g)].flatMap(([, numbers]) =>
      numbers!
        .trim()
        .split(' ')
        .map(Number)
        .filter((_, index) => index % 2 === 0),
    );
    expect(Math.max(...xs)).toBeLessThanOrEqual(width);
  });

  it('shows what would hide or reorder, and sets a text without a word', () => {
    expect(set('a\u202eb', 500, 1).markup).toBe(set('a\\u202eb', 500, 1).markup);
    expect(countLines(set('', 500, 1).markup)).toBe(1);
  });
});
