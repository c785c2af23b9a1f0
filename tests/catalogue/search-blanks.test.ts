import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findBlank, listBlanks } from '../../src/catalogue/catalogue.ts';
import { nearestBlankIds, nearestIds } from '../../src/catalogue/nearest-ids.ts';
import { searchBlanks } from '../../src/catalogue/search-blanks.ts';

const search = (...words: string[]) => searchBlanks(words).map(({ id }) => id);

describe('searchBlanks', () => {
  it('lists every blank for no words, wraps too', () => {
    expect(search()).toEqual(listBlanks().map(({ id }) => id));
    expect(search(' ', '')).toEqual(search());
    expect(search()).toEqual(expect.arrayContaining(['mug-11oz', 'tumbler-20oz-tapered']));
  });

  it('finds each blank by its id, alone', () => {
    for (const { id } of listBlanks()) expect(search(id)).toEqual([id]);
  });

  it.each([
    ['id or name', ['slate'], ['coaster-slate-10cm', 'slate-rect-15x20cm', 'slate-round-20cm']],
    ['a beginning', ['neop', 'coas'], ['coaster-neoprene-round']],
    ['capitals', ['MUG', '15OZ'], ['mug-15oz']],
    ['words in one argument', ['mug 15 oz'], ['mug-15oz']],
    ['a number and its unit apart', ['11', 'oz'], ['mug-11oz']],
    ['family', ['puzzle'], ['puzzle-8x10']],
    ['shape', ['round', '57mm'], ['mirror-insert-57']],
    ['a size without unit', ['8x10', 'glass'], []],
    ['a size in inches', ['5x7in'], ['panel-glass-5x7', 'plaque-wood-5x7']],
    ['the same with spaces', ['5', 'x', '7', 'in'], ['panel-glass-5x7', 'plaque-wood-5x7']],
    ['the same by inch marks', ['5"', 'x', '7"'], ['panel-glass-5x7', 'plaque-wood-5x7']],
    ['the same turned', ['7x5in'], ['panel-glass-5x7', 'plaque-wood-5x7']],
    ['the same in mm', ['127x177.8mm'], ['panel-glass-5x7', 'plaque-wood-5x7']],
    ['a size in cm', ['20x20cm', 'tile'], ['tile-ceramic-8in']],
    ['200x200mm', ['200x200mm', 'ceramic'], ['tile-ceramic-8in']],
    ['a diameter of a wrap', ['86.0mm'], ['mug-15oz']],
    ['whole millimetres', ['86mm'], ['card-alu-id1', 'mug-15oz']],
    ['a rounded length in inches', ['2.24in'], ['mirror-insert-57']],
  ])('by %s', (_, words, expected) => {
    expect(search(...words)).toEqual(expected);
  });

  it('finds the tile sold as 8 in by its name and by its real size', () => {
    for (const words of [
      ['8in', 'tile'],
      ['200mm', 'tile'],
      ['8', 'in', 'tile'],
      ['8', 'inch', 'tile'],
      ['8-inches', 'tile'],
      ['7.87in', 'tile'],
    ]) {
      expect(search(...words)[0], words.join(' ')).toBe('tile-ceramic-8in');
    }
  });

  it.each([
    ['ceramc', 'ceramic'],
    ['tumblr', 'tumbler'],
    ['cermaic', 'ceramic'],
    ['aluminum', 'aluminium'],
    ['neoprne', 'neoprene'],
    ['ornamant', 'ornament'],
  ])('forgives %s for %s', (typed, meant) => {
    expect(search(typed).length).toBeGreaterThan(0);
    expect(search(meant)).toEqual(expect.arrayContaining(search(typed)));
  });

  it('takes no word that the catalogue knows for a mistake', () => {
    // One letter from plate, of which there is one.
    expect(search('slate')).not.toContain('plate-vehicle-12x6');
    expect(search('plate')).toEqual(['plate-vehicle-12x6']);
  });

  it.each(['12oz', '201mm', '9in', '9x10in', '4.1in'])('does not guess at the number %s', (typed) => {
    const near = {
      '12oz': 'mug-11oz',
      '201mm': 'tile-ceramic-8in',
      '9in': 'spinner-10in',
      '9x10in': 'panel-alu-8x10',
      '4.1in': 'tile-ceramic-4.25in',
    }[typed];
    expect(search(typed)).not.toContain(near);
  });

  it('puts whole words before beginnings and family names', () => {
    // The shot glass is of the family "Ceramic mugs and cups".
    const found = search('mug');
    expect(found.slice(0, 4)).toEqual(['mug-11oz', 'mug-15oz', 'mug-latte-12oz', 'mug-latte-17oz']);
    expect(found.at(-1)).toBe('shot-glass-1.5oz');
  });

  it('asks every word', () => {
    expect(search('tile', 'mug')).toEqual([]);
    expect(search('tile', 'xyzzy')).toEqual([]);
  });

  it('only ever narrows down with more words, in a fixed order', () => {
    const words = [
      'ceramic',
      'round',
      '8in',
      'coaster',
      'tumbler',
      'slate',
      'glass',
      '100mm',
      'straight',
      'alu',
    ];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...words), { maxLength: 4 }),
        fc.constantFrom(...words),
        (some, one) => {
          const wide = search(...some);
          const narrow = search(...some, one);
          expect(wide).toEqual(expect.arrayContaining(narrow));
          expect(search(...some)).toEqual(wide);
        },
      ),
      { seed: 3, numRuns: 60 },
    );
  });

  it('survives any text', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 30 }), { maxLength: 3 }), (words) => {
        expect(searchBlanks(words).every(({ id }) => findBlank(id) !== undefined)).toBe(true);
      }),
      { seed: 4, numRuns: 100 },
    );
  });
});

describe('nearestBlankIds', () => {
  it.each([
    ['tile-ceramic-8', 'tile-ceramic-8in'],
    ['tile-8in', 'tile-ceramic-8in'],
    ['8in tile', 'tile-ceramic-8in'],
    ['TILE_CERAMIC_8IN', 'tile-ceramic-8in'],
    ['mugg-11oz', 'mug-11oz'],
    ['mug11oz', 'mug-11oz'],
    ['11oz', 'mug-11oz'],
    ['glass-board', 'board-glass-cutting'],
  ])('%s may be %s', (typed, meant) => {
    expect(nearestBlankIds(typed, 3)[0]).toBe(meant);
  });

  it('finds each id with a letter lost', () => {
    for (const { id } of listBlanks()) expect(nearestBlankIds(id.slice(1), 1), id).toEqual([id]);
  });

  it('gives at most as many as asked, none for what is far away', () => {
    expect(nearestBlankIds('tile', 2).length).toBe(2);
    expect(nearestBlankIds('tile', 0)).toEqual([]);
    for (const text of ['', '  ', '???', 'qqqqqqqqqqqq', 'x'.repeat(5000)]) {
      expect(nearestBlankIds(text, 3), text).toEqual([]);
    }
  });

  it('works for any ids', () => {
    expect(nearestIds('hardbord', ['slate', 'hardboard'], 3)).toEqual(['hardboard']);
  });
});

describe('findBlank', () => {
  it('knows ids only, no names of the language', () => {
    for (const id of ['constructor', '__proto__', 'toString', '', 'TILE-CERAMIC-8IN']) {
      expect(findBlank(id), id).toBeUndefined();
    }
  });
});
