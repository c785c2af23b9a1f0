import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { curveTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { writeMatrixProfile } from '../icc/simple-profiles.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder, putFiles } from './temp-folder.ts';

const BEDS = { 'beds/basil.png': makeArt(), 'beds/mint.png': makeArt([20, 90, 70]) };
const WORDS = ['beds', '--width', '2mm', '--out', 'out'];
const SIZE = ['--blank', '60x60mm'];

const blank = (note: string) =>
  JSON.stringify({
    id: 'shed-tile',
    name: 'Tile',
    outline: { shape: 'rect', widthMm: 60, heightMm: 60 },
    bleedMm: 2,
    safeMm: 2,
    surface: 'first',
    note,
  });
const printer = (name: string) => JSON.stringify({ name, paper: 'a4', profile: 'mine.icc' });
/** The same curves in a profile made a second later: bytes 34 and 35 of the header are its seconds (ICC.1, 7.2.8). */
const profile = (seconds: number) => {
  const bytes = writeMatrixProfile(curveTag([256 * 1.8]));
  bytes[35] = seconds;
  return bytes;
};

/** One file that a run is told of, as it was and as it is. */
const NAMED = [
  ['tile.json', ['--blank', 'tile.json'], blank('old'), blank('new')],
  ['printer.json', [...SIZE, '--printer', 'printer.json'], printer('old'), printer('new')],
  ['mine.icc', [...SIZE, '--printer', 'printer.json'], profile(1), profile(2)],
  ['mine.icc', [...SIZE, '--printer-profile', 'mine.icc'], profile(1), profile(2)],
  ['mine.icc', [...SIZE, '--condition', 'mine.icc'], profile(1), profile(2)],
  ['blankcheck.config.json', SIZE, '{"ppi":"300"}', '{"ppi":"310"}'],
  ['blankcheck.config.json', SIZE, '{"background":"white"}', '{"background":"#fffffe"}'],
  [
    'home/blankcheck/blankcheck.config.json',
    SIZE,
    '{"limit":["maxBytes=5000000"]}',
    '{"limit":["maxBytes=6000000"]}',
  ],
] as const;

async function countUnchanged(cwd: string, words: readonly string[]): Promise<number> {
  const { code, stderr } = await runMain([...WORDS, ...words], {
    cwd,
    env: { XDG_CONFIG_HOME: join(cwd, 'home') },
  });
  if (code > 1) throw new Error(stderr);
  return Number(/(\d+) artworks? (?:is|are) unchanged/.exec(stderr)?.[1] ?? 0);
}

describe('a second run over a folder', () => {
  it.each(NAMED)(
    'does all again where the content of %s changed, by %j',
    async (name, words, before, after) => {
      const cwd = makeFolder({
        ...BEDS,
        'printer.json': printer('shed'),
        'mine.icc': profile(0),
        [name]: before,
      });
      expect(await countUnchanged(cwd, words)).toBe(0);
      expect(await countUnchanged(cwd, words)).toBe(2);
      putFiles(cwd, { [name]: after });
      expect(await countUnchanged(cwd, words)).toBe(0);
      expect(await countUnchanged(cwd, words)).toBe(2);
    },
  );
});
