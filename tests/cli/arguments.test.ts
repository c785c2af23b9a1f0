import { describe, expect, it } from 'vitest';
import { parseArguments } from '../../cli/arguments.ts';

const words = (line: string) => line.split(' ').filter((word) => word !== '');
const parse = (line: string) => parseArguments(words(line));
const refused = (line: string) =>
  expect(parse(line)).rejects.toMatchObject({ code: 'bad-option', kind: 'usage' });

describe('the command', () => {
  it.each([
    ['pear.png --blank tile', 'prepare', false, ['pear.png']],
    ['prepare pear.png --blank tile', 'prepare', true, ['pear.png']],
    ['--blank tile check pear.png', 'check', true, ['pear.png']],
    ['--blank check pear.png', 'prepare', false, ['pear.png']],
    ['--blank=tile --force check a b', 'check', true, ['a', 'b']],
    ['check check', 'check', true, ['check']],
    ['./check', 'prepare', false, ['./check']],
    ['-- check', 'prepare', false, ['check']],
    ['check -- --blank -x', 'check', true, ['--blank', '-x']],
    ['- --json', 'prepare', false, ['-']],
    ['blanks tile 8in', 'blanks', true, ['tile', '8in']],
    ['press mug-11oz --json', 'press', true, ['mug-11oz']],
    ['', 'prepare', false, []],
  ])('%s', async (line, command, named, operands) => {
    expect(await parse(line)).toMatchObject({ wants: 'run', command, named, operands });
  });
});

describe('options', () => {
  it('keep what was typed', async () => {
    const line =
      'a.png --blank round:95mm --measured round:96mm --width 7in --height=3in --fit cover --turn 90 --offset -2mm,-1mm --bleed 0mm --safe 4mm --surface second --ppi 600 --background transparent --format tiff --out here --force --anyway --dry-run --recursive --json --fail-on never --quiet --pause';
    expect(await parse(line)).toMatchObject({
      options: {
        blank: 'round:95mm',
        measured: 'round:96mm',
        width: '7in',
        height: '3in',
        fit: 'cover',
        turn: '90',
        offset: '-2mm,-1mm',
        bleed: '0mm',
        safe: '4mm',
        surface: 'second',
        ppi: '600',
        background: 'transparent',
        format: 'tiff',
        out: 'here',
        force: true,
        anyway: true,
        dryRun: true,
        recursive: true,
        json: true,
        failOn: 'never',
        quiet: true,
        pause: true,
      },
    });
  });

  it('fail on errors, where nothing else is said', async () => {
    expect(await parse('a.png')).toMatchObject({ options: { failOn: 'error' } });
  });

  it('no colour in both spellings', async () => {
    expect(await parse('a.png --no-colour')).toMatchObject({ options: { colour: false } });
    expect(await parse('a.png --no-color')).toMatchObject({ options: { color: false } });
  });

  it.each([
    'a.png --blnk tile',
    'a.png --blank',
    'a.png --fit round',
    'a.png --turn 45',
    'a.png --turn=',
    'a.png --surface third',
    'a.png --format jpg',
    'a.png --fail-on always',
    'a.png --force=yes',
    'a.png -x',
    'blanks --width 3in',
  ])('%s is refused', (line) => refused(line));

  it.each([
    [['']],
    [['a.png', '']],
    [['a.png', '--out', '']],
    [['a.png', '--out=']],
    [['--blank', '', 'a.png']],
  ])('%j is refused: an empty word would stand for the folder one is in', (argv) =>
    expect(parseArguments(argv)).rejects.toMatchObject({ code: 'bad-option' }),
  );

  it('a mistyped one is told with the one that may be meant', async () => {
    await expect(parse('a.png --blnk tile')).rejects.toThrow(
      "Unknown option '--blnk'.\nDid you mean --blank?",
    );
  });
});

describe('help and version', () => {
  it.each([
    ['--help', null],
    ['-h', null],
    ['help', null],
    ['pear.png --help', null],
    ['check --help', 'check'],
    ['--help check', 'check'],
    ['help press', 'press'],
    ['help nothing', null],
  ])('%s', async (line, about) => expect(await parse(line)).toEqual({ wants: 'help', about }));

  it.each(['--version', '-V', 'check --version'])('%s', async (line) =>
    expect(await parse(line)).toEqual({ wants: 'version' }),
  );

  it('after -- they are names', async () => {
    expect(await parse('-- --help --version')).toMatchObject({
      wants: 'run',
      operands: ['--help', '--version'],
    });
  });
});
