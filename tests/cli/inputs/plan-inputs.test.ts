import { linkSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { planInputs } from '../../../cli/inputs/plan-inputs.ts';
import type { PlannedArtwork } from '../../../cli/inputs/planned-artwork.ts';
import { writeZip } from '../../../fixtures/byte-writers/write-zip.ts';
import { makeArt } from '../art.ts';
import { makeFolder } from '../temp-folder.ts';

const ART = makeArt();
const never = new AbortController().signal;
const plan = (cwd: string, words: readonly string[], recursive = false) =>
  planInputs(words, { cwd, recursive, signal: never });

/** `path`, or `path: code` of what is unreadable. */
const told = ({ path, origin }: PlannedArtwork) =>
  origin.kind === 'fault' ? `${path}: ${origin.error.code}` : path;

async function pathsOf(cwd: string, words: readonly string[], recursive = false): Promise<string[]> {
  return (await plan(cwd, words, recursive)).planned.flatMap(({ artworks }) => artworks.map(told));
}

describe('files', () => {
  it('are told as they were given, whatever they are called', async () => {
    const cwd = makeFolder({ 'pear.png': ART, 'notes.txt': 'no art', 'beds/.hidden.png': ART, '-': ART });
    const absolute = join(cwd, 'pear.png');
    expect(await pathsOf(cwd, ['notes.txt', './beds/.hidden.png', absolute])).toEqual([
      'notes.txt',
      './beds/.hidden.png',
      absolute,
    ]);
  });

  it('that are missing are told, and cost no other', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { planned, missing } = await plan(cwd, [
      'none.png',
      'pear.png',
      'pear.png/x',
      'x'.repeat(300),
      'a\0b',
    ]);
    expect(planned.flatMap(({ artworks }) => artworks.map(told))).toEqual(['pear.png']);
    expect(missing.map(({ code }) => code)).toEqual(Array(4).fill('no-such-file'));
  });

  it('that are there and cannot be opened are unreadable', async () => {
    const cwd = makeFolder();
    symlinkSync('circle.png', join(cwd, 'circle.png'));
    expect(await pathsOf(cwd, ['circle.png'])).toEqual(['circle.png: cannot-read']);
  });

  it('count once, however often and by whatever path they are named; two names of one content are two', async () => {
    const cwd = makeFolder({ 'beds/pear.png': ART });
    symlinkSync('beds', join(cwd, 'link'));
    linkSync(join(cwd, 'beds/pear.png'), join(cwd, 'beds/quince.png'));
    const { planned } = await plan(cwd, [
      'beds/pear.png',
      './beds/../beds/pear.png',
      'link/pear.png',
      'beds',
      '-',
      '-',
    ]);
    expect(planned.map(({ artworks, repeats }) => [artworks.map(told), repeats])).toEqual([
      [['beds/pear.png'], 0],
      [[], 1],
      [[], 1],
      [['beds/quince.png'], 1],
      [['-'], 0],
      [[], 1],
    ]);
  });
});

describe('a folder', () => {
  const files = {
    'beds/b.png': ART,
    'beds/a.JPG': 'damaged',
    'beds/B.png': ART,
    'beds/empty.png': '',
    'beds/really-a-png.dat': ART,
    'beds/notes.txt': 'no art',
    'beds/.hidden.png': ART,
    'beds/.blankcheck-00000000-1-000000000000.tmp': '',
    'beds/inner/c.png': ART,
    'beds/inner-2.png': ART,
    'beds/.cache/d.png': ART,
  };

  it('gives its artworks by path in code units; the rest is counted', async () => {
    const { planned } = await plan(makeFolder(files), ['beds/']);
    expect(planned).toHaveLength(1);
    expect(planned[0]!.artworks.map(told)).toEqual([
      'beds/B.png',
      'beds/a.JPG',
      'beds/b.png',
      'beds/empty.png',
      'beds/inner-2.png',
      'beds/really-a-png.dat',
    ]);
    expect(planned[0]!.passedOver).toBe(3);
    expect(planned[0]!.kind).toBe('folder');
  });

  it('is looked into with all that is below when told to, but not into what is hidden', async () => {
    const paths = await pathsOf(makeFolder(files), ['beds'], true);
    expect(paths.filter((path) => path.includes('inner'))).toEqual(['beds/inner-2.png', 'beds/inner/c.png']);
    expect(paths.some((path) => path.includes('cache'))).toBe(false);
  });

  it('tells a name that is not UTF-8, which Node cannot open', async (context) => {
    if (process.platform !== 'linux') context.skip('other systems take no such names');
    const cwd = makeFolder({ 'beds/': '' });
    writeFileSync(Buffer.from(`${cwd}/beds/p\xe9ar.png`, 'latin1'), ART);
    expect(await pathsOf(cwd, ['beds'])).toEqual(['beds/p\ufffdar.png: cannot-read']);
  });

  it('of the name . gives paths without it', async () => {
    expect(await pathsOf(makeFolder({ 'pear.png': ART }), ['.'])).toEqual(['pear.png']);
  });

  it('follows links to files, not to folders, and not in circles', async () => {
    const cwd = makeFolder({ 'beds/pear.png': ART, 'other/quince.png': ART });
    symlinkSync('../other/quince.png', join(cwd, 'beds/link.png'));
    symlinkSync('../other', join(cwd, 'beds/other'));
    symlinkSync('..', join(cwd, 'beds/up'));
    symlinkSync('nowhere', join(cwd, 'beds/broken.png'));
    symlinkSync('nowhere', join(cwd, 'beds/broken.txt'));
    const { planned } = await plan(cwd, ['beds'], true);
    expect(planned[0]!.artworks.map(told)).toEqual([
      'beds/broken.png: cannot-read',
      'beds/link.png',
      'beds/pear.png',
    ]);
    expect(planned[0]!.passedOver).toBe(1);
  });

  it('may hold nothing', async () => {
    const cwd = makeFolder({ 'beds/notes.txt': 'no art' });
    mkdirSync(join(cwd, 'none'));
    const { planned } = await plan(cwd, ['beds', 'none']);
    expect(planned.map(({ artworks, passedOver }) => [artworks.length, passedOver])).toEqual([
      [0, 1],
      [0, 0],
    ]);
  });
});

describe('an archive', () => {
  const zip = writeZip([
    { name: 'pear.png', content: ART },
    { name: 'beds/quince.png', content: 'damaged' },
    { name: 'beds/notes.txt', content: 'no art' },
    { name: 'beds/art.dat', content: ART },
    { name: '../evil.png', content: ART },
    { name: '__MACOSX/._pear.png', content: 'x' },
    { name: 'inner.zip', content: 'PK' },
  ]);

  it('is counted once, however often it is named, and so is what lies in a folder', async () => {
    const cwd = makeFolder({
      'beds/pack.zip': zip,
      'beds/notes.txt': 'none',
      'beds/inner/label.txt': 'none',
    });
    const words = ['beds/pack.zip', './beds/pack.zip', 'beds', 'beds/*', 'beds/inner'];
    const { planned } = await plan(cwd, words, true);
    expect(
      planned.map(({ artworks, repeats, passedOver }) => [artworks.length, repeats, passedOver]),
    ).toEqual([
      [5, 0, 2],
      [0, 5, 0],
      [0, 5, 2],
      [0, 5, 0],
      [0, 0, 0],
    ]);
  });

  it('gives its artworks by name, what is refused among them, the rest counted', async () => {
    const { planned } = await plan(makeFolder({ 'pack.zip': zip }), ['./pack.zip']);
    expect(planned[0]!.artworks.map(told)).toEqual([
      './pack.zip/../evil.png: archive-entry-refused',
      './pack.zip/beds/art.dat',
      './pack.zip/beds/quince.png',
      './pack.zip/inner.zip: archive-entry-refused',
      './pack.zip/pear.png',
    ]);
    expect(planned[0]!.passedOver).toBe(2);
    expect(planned[0]!.kind).toBe('archive');
    const quince = planned[0]!.artworks[2]!;
    expect([quince.stem, quince.extension, quince.parent, quince.folder]).toEqual([
      'pack.quince',
      'png',
      'beds',
      '.',
    ]);
  });

  it('is known by its content or by its name, but a picture is a picture', async () => {
    const cwd = makeFolder({
      'pack.dat': zip,
      'art.zip': ART,
      'broken.zip': 'junk',
      'pear.png': zip,
      'empty.zip': '',
    });
    expect(await pathsOf(cwd, ['pack.dat'])).toContain('pack.dat/pear.png');
    expect(await pathsOf(cwd, ['art.zip', 'broken.zip', 'pear.png', 'empty.zip'])).toEqual([
      'art.zip',
      'broken.zip: archive-damaged',
      'pear.png',
      'empty.zip: archive-damaged',
    ]);
  });

  it('in a folder is opened where its name says so; office files are not', async () => {
    const cwd = makeFolder({
      'beds/pack.zip': writeZip([{ name: 'pear.png', content: ART }]),
      'beds/plan.odt': zip,
    });
    const { planned } = await plan(cwd, ['beds']);
    expect(planned[0]!.artworks.map(told)).toEqual(['beds/pack.zip/pear.png']);
    expect(planned[0]!.passedOver).toBe(1);
  });

  it('whose directory breaks off is told beside what was before', async () => {
    const broken = writeZip([{ name: 'pear.png', content: ART }], { entryCount: 2 });
    expect(await pathsOf(makeFolder({ 'pack.zip': broken }), ['pack.zip'])).toEqual([
      'pack.zip/pear.png',
      'pack.zip: archive-damaged',
    ]);
  });
});
