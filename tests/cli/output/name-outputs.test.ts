import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type NameParts, nameOutputs } from '../../../cli/output/name-outputs.ts';

/** `beds/pear.png` as its parts, with all print-ready files in one folder. */
function parts(path: string, folder = 'out'): NameParts {
  const [, parent = '', stem = '', extension = ''] = /^(?:.*?([^/]*)\/)?([^/]+?)(?:\.([^./]*))?$/.exec(path)!;
  return { folder, stem, extension, parent, path };
}
const names = (...paths: string[]) =>
  nameOutputs(
    paths.map((path) => parts(path)),
    'tile',
    'png',
  );

describe('nameOutputs', () => {
  it('is the stem, the blank and the kind of file', () => {
    expect(names('pear.png', 'apple.v2.jpg', 'noext')).toEqual([
      'pear.tile.png',
      'apple.v2.tile.png',
      'noext.tile.png',
    ]);
    expect(nameOutputs([parts('pear.png')], 'round-95mm', 'tif')).toEqual(['pear.round-95mm.tif']);
  });

  it('keeps the own extensions of two that would share a name, and of no third', () => {
    expect(names('pear.png', 'pear.jpg', 'quince.png')).toEqual([
      'pear.png.tile.png',
      'pear.jpg.tile.png',
      'quince.tile.png',
    ]);
  });

  it('then names their folders', () => {
    expect(names('a/pear.png', 'b/pear.png')).toEqual(['a.pear.png.tile.png', 'b.pear.png.tile.png']);
    expect(names('a/pear.png', 'a/pear.jpg', 'b/pear.png')).toEqual([
      'a.pear.png.tile.png',
      'pear.jpg.tile.png',
      'b.pear.png.tile.png',
    ]);
  });

  it('then adds a short hash of the path', () => {
    const [one, two] = names('x/a/pear.png', 'y/a/pear.png');
    expect(one).toMatch(/^a\.pear\.png\.[0-9a-f]{8}\.tile\.png$/);
    expect(two).toMatch(/^a\.pear\.png\.[0-9a-f]{8}\.tile\.png$/);
    expect(one).not.toBe(two);
  });

  it('lets equal names be in different folders', () => {
    expect(nameOutputs([parts('a/pear.png', 'a/out'), parts('b/pear.png', 'b/out')], 'tile', 'png')).toEqual([
      'pear.tile.png',
      'pear.tile.png',
    ]);
  });

  it('takes names that some system cannot tell apart for equal: case, and how an accent is spelt', () => {
    expect(names('Pear.png', 'pear.jpg')).toEqual(['Pear.png.tile.png', 'pear.jpg.tile.png']);
    expect(names('\u00e9.png', 'e\u0301.jpg')).toEqual(['\u00e9.png.tile.png', 'e\u0301.jpg.tile.png']);
  });

  it('sees a name that only arose while others were told apart', () => {
    const found = names('pear.png', 'pear.jpg', 'pear.png.webp');
    expect(new Set(found).size).toBe(3);
  });

  it('never gives a name twice, and the same names whatever the order', () => {
    const path = fc
      .tuple(
        fc.constantFrom('a/', 'b/', 'x/a/', ''),
        fc.constantFrom('p', 'P', 'p.png', 'a.p'),
        fc.constantFrom('.png', '.jpg', ''),
      )
      .map((all) => all.join(''));
    fc.assert(
      fc.property(fc.uniqueArray(path, { maxLength: 20 }), (paths) => {
        const found = names(...paths);
        expect(new Set(found.map((name) => name.toLowerCase())).size).toBe(paths.length);
        const reversed = names(...[...paths].reverse()).toReversed();
        expect(reversed).toEqual(found);
      }),
      { seed: 8 },
    );
  });
});
