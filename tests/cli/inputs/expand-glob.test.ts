import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expandGlob } from '../../../cli/inputs/expand-glob.ts';
import { expandBraces, matchName } from '../../../cli/inputs/match-name.ts';
import { makeArt } from '../art.ts';
import { runMain } from '../run-main.ts';
import { makeFolder } from '../temp-folder.ts';

const FILES = {
  'beds/basil.png': makeArt(),
  'beds/mint.jpg': '',
  'beds/.hidden.png': makeArt(),
  'beds/low/thyme.png': makeArt(),
  'pots/basil.png': makeArt(),
};

describe('expandGlob', () => {
  it.each([
    ['beds/*.png', ['beds/basil.png']],
    ['beds/*', ['beds/basil.png', 'beds/low', 'beds/mint.jpg']],
    ['*/basil.png', ['beds/basil.png', 'pots/basil.png']],
    ['**/*.png', ['beds/basil.png', 'beds/low/thyme.png', 'pots/basil.png']],
    ['beds/**', ['beds/basil.png', 'beds/low', 'beds/low/thyme.png', 'beds/mint.jpg']],
    ['beds/{basil,mint}.{png,jpg}', ['beds/basil.png', 'beds/mint.jpg']],
    ['beds/.h*', ['beds/.hidden.png']],
    ['./beds/m?nt.*', ['beds/mint.jpg']],
    ['nowhere/*', []],
  ])('%s', async (pattern, expected) => {
    expect(await expandGlob(pattern, makeFolder(FILES))).toEqual(expected);
  });
});

describe('matchName', () => {
  it.each([
    ['*', 'basil', true],
    ['b*l', 'basil', true],
    ['b*s*l', 'basil', true],
    ['b*x', 'basil', false],
    ['[a-c]asil', 'basil', true],
    ['[!a-c]asil', 'basil', false],
    ['[]x]', ']', true],
    ['[basil', '[basil', true],
    ['*', '.basil', false],
    ['???', 'añb', true],
  ])('%s of %s', (pattern, name, expected) => {
    expect(matchName(pattern)(name)).toBe(expected);
  });

  it('agrees with a regular expression of the same meaning', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', '*', '?'), maxLength: 8 });
    const name = fc.string({ unit: fc.constantFrom('a', 'b'), maxLength: 10 });
    fc.assert(
      fc.property(word, name, (pattern, text) => {
        const same = new RegExp(`^${pattern.replaceAll('*', '.*').replaceAll('?', '.')}$`);
        expect(matchName(pattern)(text)).toBe(same.test(text));
      }),
      { numRuns: 2000 },
    );
  });

  it('is quick where going back over every run would take for ever', () => {
    expect(matchName(`${'*a'.repeat(100)}*b`)('a'.repeat(5000))).toBe(false);
  });

  it('expands braces in braces, and leaves others', () => {
    expect(expandBraces('{a,{b,c}d}.png')).toEqual(['a.png', 'bd.png', 'cd.png']);
    expect(expandBraces('{a}.png')).toEqual(['{a}.png']);
    expect(expandBraces('{a,b}{c,d}')).toEqual(['ac', 'ad', 'bc', 'bd']);
  });

  it('gives up at once where braces multiply', () => {
    expect(expandBraces('{a,b}'.repeat(40))).toBeNull();
  });
});

describe('a pattern on the command line', () => {
  const codeOf = async (files: Record<string, string | Uint8Array>, word: string) => {
    const run = await runMain(['check', word, '--blank', '60x60mm', '--width', '2mm', '--json'], {
      cwd: makeFolder(files),
    });
    const paths = run.stdout === '' ? [] : JSON.parse(run.stdout).results;
    return [run.code, paths.map(({ artwork }: { artwork: { path: string } }) => artwork.path)];
  };

  it('stands for what it matches', async () => {
    expect(await codeOf(FILES, '*/basil.png')).toEqual([0, ['beds/basil.png', 'pots/basil.png']]);
  });

  it('is none where a file has that very name', async () => {
    const files = { 'bed[1].png': makeArt(), 'bed1.png': makeArt() };
    expect(await codeOf(files, 'bed[1].png')).toEqual([0, ['bed[1].png']]);
  });

  it('names nothing where nothing matches', async () => {
    expect(await codeOf(FILES, 'sheds/*.png')).toEqual([2, []]);
  });
});
