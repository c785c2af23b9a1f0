import { describe, expect, it } from 'vitest';
import { findBlank, listBlanks } from '../../src/catalogue/catalogue.ts';
import { renderBlankList } from '../../src/reports/blank-list-text.ts';
import { expectGolden } from '../golden.ts';

const list = (width: number, ids?: readonly string[]) =>
  renderBlankList(ids ? ids.map((id) => findBlank(id)!) : listBlanks(), { colour: false, width });

describe('renderBlankList', () => {
  it.each([
    ['wide', 160],
    ['narrow', 80],
  ])('%s as reviewed', (name, width) => {
    expectGolden(`blanks/${name}.txt`, list(width));
  });

  it('has one line for each blank where there is room, with columns below each other', () => {
    const [heading = '', ...lines] = list(200).split('\n');
    const starts = ['id', 'name', 'size', 'surface', 'family'].map((word) => heading.indexOf(word));
    expect(lines.filter((line) => line.includes('  ')).length).toBe(listBlanks().length);
    for (const [i, blank] of listBlanks().entries()) {
      const cells = starts.map((start, c) => lines[i]!.slice(start, starts[c + 1]).trimEnd());
      expect([cells[0], cells[1], cells[3], cells[4]]).toEqual([
        blank.id,
        blank.name,
        blank.surface,
        blank.family,
      ]);
      expect(cells[2]).toMatch(/ mm \(.* in\)$/);
    }
  });

  it.each([
    ['tile-ceramic-8in', '200 x 200 mm (7.87 x 7.87 in)'],
    ['mug-11oz', '215.9 x 88.9 mm (8.5 x 3.5 in)'],
    ['tumbler-20oz-tapered', '89/70 x 140 mm (3.5/2.76 x 5.51 in)'],
  ])('%s: %s', (id, size) => {
    expect(list(200, [id])).toContain(size);
  });

  it('explains the sizes of round bodies only where there are some', () => {
    expect(list(200, ['mug-11oz'])).toContain('Tapered');
    expect(list(200, ['tile-ceramic-8in'])).not.toContain('Tapered');
  });

  it('is empty for no blanks, and takes a page without end', () => {
    expect(list(80, [])).toBe('');
    expect(list(Number.POSITIVE_INFINITY, ['tile-ceramic-8in']).split('\n').length).toBe(3);
  });

  it('keeps within 80 columns', () => {
    expect(
      Math.max(
        ...list(80)
          .split('\n')
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(80);
  });
});
