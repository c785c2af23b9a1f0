import { describe, expect, it } from 'vitest';
import { readDefects } from '../../src/ledger/read-defects.ts';
import { searchPressings } from '../../src/ledger/search-pressings.ts';
import { makePressing } from './pressings.ts';

const entries = [
  makePressing({ result: 3, note: 'Jardin de la Forêt'.normalize('NFD') }),
  makePressing({ result: 5, at: '2026-03-01', paper: 'matt' }),
  makePressing({ result: 5, at: '2026-03-02', blank: { id: 'mug-11oz', lot: 'B2' } }),
  makePressing({ result: 5, at: '2026-03-02', printer: 'attic' }),
].map((pressing, index) => ({ line: index + 1, pressing }));

const found = (...words: string[]) => searchPressings(entries, words).map(({ line }) => line);

describe('searching what was pressed', () => {
  it('puts the best first, then the newest, then the later line', () =>
    expect(found()).toEqual([4, 3, 2, 1]));

  it.each([
    [['mug'], [3]],
    [['MATT'], [2]],
    [['b2', 'firm'], [3]],
    [['attic faded'], [4]],
    [['forêt'], [1]],
    [['2026-03-02'], [4, 3]],
    [['zeppelin'], []],
    [['matt', 'attic'], []],
  ])('%j finds lines %j', (words, lines) => expect(found(...words)).toEqual(lines));

  it('does not change the order of the ledger', () => {
    found();
    expect(entries.map(({ line }) => line)).toEqual([1, 2, 3, 4]);
  });
});

describe('defects', () => {
  it('are read from a list, each once, in the order of the vocabulary', () =>
    expect(readDefects(' specks,Faded ,specks')).toEqual(['faded', 'specks']));

  it.each(['', ',', 'ugly', 'faded specks'])('%j is refused', (text) =>
    expect(() => readDefects(text)).toThrowError(expect.objectContaining({ code: 'unknown-defect' })),
  );
});
