import { describe, expect, it } from 'vitest';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import { VERSION } from '../../src/index.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

const ART = makeArt();
/** The art is 24 px wide: 2 mm make it sharp, 20 mm make it stop. */
const SHARP = ['--blank', '40x40mm', '--width', '2mm'];
const BLURRED = ['--blank', '40x40mm', '--width', '20mm'];
/** 400 px are 33.9 mm at 300 ppi. */
const WIDE = ['--blank', '50x50mm', '--width', '33mm'];
const FILE = 'pear.40x40mm.png';

/** The codes in brackets of the lines that begin with the program's name. */
const codesIn = (stderr: string) =>
  [...stderr.matchAll(/^blankcheck: .*\[([a-z-]+)\]$/gm)].map(([, code]) => code);

interface Case {
  readonly args: readonly string[];
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly stdin?: Uint8Array;
  readonly code: number;
  /** Lines of standard output; none by default. */
  readonly stdout?: readonly string[];
  /** Codes of the errors on standard error. */
  readonly errors?: readonly string[];
  /** Files that are new afterwards. */
  readonly written?: readonly string[];
}

const PEAR = { 'pear.png': ART };
const cases: Record<string, Case> = {
  'an artwork': {
    args: ['pear.png', ...SHARP],
    code: 0,
    stdout: [`print-ready/${FILE}`],
    written: [`print-ready/${FILE}`],
  },
  'the same by name': {
    args: ['prepare', './pear.png', ...SHARP],
    code: 0,
    stdout: [`print-ready/${FILE}`],
    written: [`print-ready/${FILE}`],
  },
  'another folder': {
    args: ['pear.png', ...SHARP, '--out', 'a/b'],
    code: 0,
    stdout: [`a/b/${FILE}`],
    written: [`a/b/${FILE}`],
  },
  'a TIFF': {
    args: ['pear.png', ...SHARP, '--format', 'tiff'],
    code: 0,
    stdout: ['print-ready/pear.40x40mm.tif'],
    written: ['print-ready/pear.40x40mm.tif'],
  },
  'a check': { args: ['check', 'pear.png', ...SHARP], code: 0 },
  'a dry run': { args: ['pear.png', ...SHARP, '--dry-run'], code: 0 },
  'art that stops': { args: ['pear.png', ...BLURRED], code: 1 },
  'art that stops, anyway': {
    args: ['pear.png', ...BLURRED, '--anyway'],
    code: 1,
    stdout: [`print-ready/${FILE}`],
    written: [`print-ready/${FILE}`],
  },
  'art that stops, forgiven': { args: ['pear.png', ...BLURRED, '--fail-on', 'never'], code: 0 },
  'standard input': {
    args: ['-', ...SHARP],
    stdin: ART,
    code: 0,
    stdout: ['print-ready/stdin.40x40mm.png'],
    written: ['print-ready/stdin.40x40mm.png'],
  },
  'empty standard input': { args: ['-', ...SHARP], code: 1 },
  'a folder': {
    args: ['beds', ...SHARP],
    files: { 'beds/pear.png': ART, 'beds/pear.jpg': 'damaged', 'beds/apple.png': ART, 'beds/notes.txt': 'x' },
    code: 1,
    stdout: ['beds/print-ready/apple.40x40mm.png', 'beds/print-ready/pear.png.40x40mm.png'],
    written: ['beds/print-ready/apple.40x40mm.png', 'beds/print-ready/pear.png.40x40mm.png'],
  },
  'an archive': {
    args: ['pack.zip', ...SHARP],
    files: {
      'pack.zip': writeZip([
        { name: 'beds/pear.png', content: ART },
        { name: '../x.png', content: ART },
      ]),
    },
    code: 1,
    stdout: ['print-ready/pack.pear.40x40mm.png'],
    written: ['print-ready/pack.pear.40x40mm.png'],
  },
  'a name that options look like': {
    args: [...SHARP, '--', '--force.png'],
    files: { '--force.png': ART },
    code: 0,
    stdout: ['print-ready/--force.40x40mm.png'],
    written: ['print-ready/--force.40x40mm.png'],
  },
  'a name that commands have': {
    args: ['./check', ...SHARP],
    files: { check: ART },
    code: 0,
    stdout: ['print-ready/check.40x40mm.png'],
    written: ['print-ready/check.40x40mm.png'],
  },
  'a missing file beside a good one: the good one is done, and nothing is said to programs': {
    args: ['none.png', 'pear.png', ...SHARP],
    code: 2,
    errors: ['no-such-file'],
    written: [`print-ready/${FILE}`],
  },
  'a missing file with --json': { args: ['none.png', ...SHARP, '--json'], code: 2, errors: ['no-such-file'] },
  'a folder without artwork': {
    args: ['beds', 'pear.png', ...SHARP],
    files: { 'beds/notes.txt': 'x', ...PEAR },
    code: 2,
    errors: ['no-artwork-in-folder'],
    written: [`print-ready/${FILE}`],
  },
  'an archive without artwork': {
    args: ['pack.zip', ...SHARP],
    files: { 'pack.zip': writeZip([]) },
    code: 2,
    errors: ['no-artwork-in-folder'],
  },
  'a file that is no artwork': { args: ['notes.txt', ...SHARP], files: { 'notes.txt': 'x' }, code: 1 },
  'a file that is there': {
    args: ['pear.png', 'apple.png', ...SHARP],
    files: { ...PEAR, 'apple.png': ART, [`print-ready/${FILE}`]: 'old' },
    code: 1,
    stdout: ['print-ready/apple.40x40mm.png'],
    written: ['print-ready/apple.40x40mm.png'],
  },
  'a folder path that is a file': { args: ['pear.png', ...SHARP, '--out', 'pear.png/x'], code: 1 },
  'a condition of the seeds': {
    args: ['check', 'pear.png', ...SHARP, '--condition', 'coated-reference'],
    code: 0,
  },
  "a maker's own profile, under which findings are warnings": {
    args: ['check', 'vivid.png', ...WIDE, '--condition', 'mine.icc', '--fail-on', 'warning'],
    files: { 'vivid.png': makeArt([0, 255, 0], 400), 'mine.icc': COATED_REFERENCE },
    code: 1,
  },
  'the same by the reference, under which they are advice': {
    args: ['check', 'vivid.png', ...WIDE, '--fail-on', 'warning'],
    files: { 'vivid.png': makeArt([0, 255, 0], 400) },
    code: 0,
  },
  'a condition that is none': {
    args: ['pear.png', ...SHARP, '--condition', 'my-printer'],
    code: 2,
    errors: ['bad-condition'],
  },
  'a profile that is not there': {
    args: ['pear.png', ...SHARP, '--condition', 'mine.icc'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a picture as profile': {
    args: ['pear.png', ...SHARP, '--condition', 'pear.png'],
    code: 2,
    errors: ['bad-condition'],
  },
  'a folder as profile': {
    args: ['pear.png', ...SHARP, '--condition', 'beds'],
    files: { ...PEAR, 'beds/notes.txt': 'x' },
    code: 2,
    errors: ['bad-condition'],
  },
  'a profile of 20 MB': {
    args: ['pear.png', ...SHARP, '--condition', 'mine.icc', '--json'],
    files: { ...PEAR, 'mine.icc': new Uint8Array(20_000_000) },
    code: 2,
    errors: ['bad-condition'],
  },
  'a blank with a decimal comma': {
    args: ['pear.png', '--blank', '200,5x200mm'],
    code: 2,
    errors: ['bad-size'],
  },
  'a sheet with a decimal comma': {
    args: ['pear.png', ...SHARP, '--sheet', '200,5x300mm'],
    code: 2,
    errors: ['bad-size'],
  },
  'an offset with a decimal comma': {
    args: ['pear.png', ...SHARP, '--offset', '2,5mm,1mm'],
    code: 2,
    errors: ['bad-offset'],
  },
  'settings of 3 MB': {
    args: ['pear.png', ...SHARP],
    files: { ...PEAR, 'blankcheck.config.json': `{}${' '.repeat(3_000_000)}` },
    code: 2,
    errors: ['bad-config'],
  },
  'settings that are a folder': {
    args: ['pear.png', ...SHARP],
    files: { ...PEAR, 'blankcheck.config.json/': '' },
    code: 2,
    errors: ['bad-config'],
  },
  'a blank record of 3 MB': {
    args: ['pear.png', '--blank', 'mine.json'],
    files: { ...PEAR, 'mine.json': `{}${' '.repeat(3_000_000)}` },
    code: 2,
    errors: ['bad-blank-record'],
  },
  'a printer that is not there': {
    args: ['pear.png', ...SHARP, '--printer', 'mine.json'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a job that is not there': {
    args: ['sheet', '--job', 'mine.json'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a ledger that is not there': {
    args: ['history', '--ledger', 'mine.jsonl'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a printer profile that is not there': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'mine.icc'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a picture as printer profile': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'pear.png'],
    code: 2,
    errors: ['bad-printer-profile'],
  },
  'a folder as printer profile': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'beds'],
    files: { ...PEAR, 'beds/notes.txt': 'x' },
    code: 2,
    errors: ['bad-printer-profile'],
  },
  'a printer profile of 20 MB': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'mine.icc', '--json'],
    files: { ...PEAR, 'mine.icc': new Uint8Array(20_000_000) },
    code: 2,
    errors: ['bad-printer-profile'],
  },
  'inks as PNG': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'mine.icc', '--format', 'png'],
    files: { ...PEAR, 'mine.icc': COATED_REFERENCE },
    code: 2,
    errors: ['bad-option'],
  },
  'an intent without a printer': {
    args: ['pear.png', ...SHARP, '--intent', 'perceptual'],
    code: 2,
    errors: ['bad-option'],
  },
  'inks, which go into a TIFF': {
    args: ['pear.png', ...SHARP, '--printer-profile', 'mine.icc', '--no-black-point-compensation'],
    files: { ...PEAR, 'mine.icc': COATED_REFERENCE },
    code: 0,
    stdout: ['print-ready/pear.40x40mm.tif'],
    written: ['print-ready/pear.40x40mm.tif'],
  },
  'no artwork': { args: SHARP, code: 2, errors: ['missing-artwork'] },
  'no blank': { args: ['pear.png'], code: 2, errors: ['missing-blank'] },
  'an unknown blank': {
    args: ['pear.png', '--blank', 'tile-ceramic-8inch'],
    code: 2,
    errors: ['unknown-blank'],
  },
  'a blank without unit': {
    args: ['pear.png', '--blank', '200x200'],
    code: 2,
    errors: ['length-without-unit'],
  },
  'a blank file that is missing': {
    args: ['pear.png', '--blank', 'no.json'],
    code: 2,
    errors: ['no-such-file'],
  },
  'a blank file that is no JSON': {
    args: ['pear.png', '--blank', 'blank.json'],
    files: { 'blank.json': '{"id":' },
    code: 2,
    errors: ['bad-blank-record'],
  },
  'a blank file with a bad record': {
    args: ['pear.png', '--blank', 'blank.json'],
    files: { 'blank.json': '{"id": "mine"}' },
    code: 2,
    errors: ['bad-blank-record'],
  },
  'a blank file': {
    args: ['pear.png', '--blank', 'blank.json', '--width', '2mm'],
    files: {
      ...PEAR,
      'blank.json': JSON.stringify({
        id: 'seed-tin-lid',
        name: 'lid of a seed tin',
        outline: { shape: 'circle', widthMm: 60, heightMm: 60 },
        surface: 'first',
      }),
    },
    code: 0,
    stdout: ['print-ready/pear.seed-tin-lid.png'],
    written: ['print-ready/pear.seed-tin-lid.png'],
  },
  'a bare width': {
    args: ['pear.png', '--blank', '40x40mm', '--width', '2'],
    code: 2,
    errors: ['length-without-unit'],
  },
  'a width of nothing': {
    args: ['pear.png', '--blank', '40x40mm', '--width', '0mm'],
    code: 2,
    errors: ['bad-length'],
  },
  'a bad offset': { args: ['pear.png', ...SHARP, '--offset', '1mm'], code: 2, errors: ['bad-offset'] },
  'a bad colour': { args: ['pear.png', ...SHARP, '--background', 'wite'], code: 2, errors: ['bad-colour'] },
  'a bad measured size': { args: ['pear.png', ...SHARP, '--measured', 'big'], code: 2, errors: ['bad-size'] },
  'too many pixels per inch': {
    args: ['pear.png', ...SHARP, '--ppi', '2401'],
    code: 2,
    errors: ['ppi-out-of-range'],
  },
  'no number of them': {
    args: ['pear.png', ...SHARP, '--ppi', '3e2'],
    code: 2,
    errors: ['ppi-out-of-range'],
  },
  'marks that are not wanted, without a sheet': {
    args: ['pear.png', ...SHARP, '--omit-marks', 'label'],
    code: 2,
    errors: ['bad-option'],
  },
  'an unknown mark': {
    args: ['pear.png', ...SHARP, '--format', 'png', '--sheet', 'a4', '--omit-marks', 'stamp'],
    code: 2,
    errors: ['unknown-mark'],
  },
  'an unknown sheet': {
    args: ['pear.png', ...SHARP, '--format', 'png', '--sheet', 'a44'],
    code: 2,
    errors: ['unknown-sheet'],
  },
  'an unknown option': { args: ['pear.png', ...SHARP, '--forse'], code: 2, errors: ['bad-option'] },
  'a mistyped command': { args: ['chekc', 'pear.png', ...SHARP], code: 2, errors: ['unknown-command'] },
  'a press card of nothing': { args: ['press'], code: 2, errors: ['missing-blank'] },
  'a press card of two': { args: ['press', 'mug-11oz', 'mug-15oz'], code: 2, errors: ['bad-option'] },
  'a press card of an unknown blank': { args: ['press', 'mug-11'], code: 2, errors: ['unknown-blank'] },
};

/** Runs over folders and archives keep one beside what they write. */
const isRunRecord = (file: string) => file.endsWith('/.blankcheck-run.jsonl');

describe('main', () => {
  it.each(Object.entries(cases))(
    '%s',
    async (_, { args, files = PEAR, stdin, code, stdout = [], errors = [], written = [] }) => {
      const cwd = makeFolder(files);
      const before = listFiles(cwd);
      const run = await runMain(args, { cwd, ...(stdin && { stdin }) });
      expect(run.stdout.split('\n').filter((line) => line !== '')).toEqual(stdout);
      expect(codesIn(run.stderr)).toEqual(errors);
      expect(listFiles(cwd).filter((file) => !before.includes(file) && !isRunRecord(file))).toEqual(written);
      expect(run.code).toBe(code);
      expect(run.stderr).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
    },
  );

  it('the version', async () => {
    expect(await runMain(['--version'], { cwd: '.' })).toEqual({
      code: 0,
      stdout: `${VERSION}\n`,
      stderr: '',
    });
  });

  it('the catalogue, what of it fits, and that nothing does', async () => {
    const all = await runMain(['blanks'], { cwd: '.' });
    expect([all.code, all.stderr]).toEqual([0, '']);
    expect(all.stdout).toContain('mug-11oz');
    const tiles = await runMain(['blanks', 'tile', '8in', '--json'], { cwd: '.' });
    const { schemaVersion, blanks } = JSON.parse(tiles.stdout) as {
      schemaVersion: number;
      blanks: { id: string }[];
    };
    expect([schemaVersion, blanks[0]?.id]).toEqual([1, 'tile-ceramic-8in']);
    const none = await runMain(['blanks', 'zzzzzz'], { cwd: '.' });
    expect([none.code, none.stdout]).toEqual([0, '']);
    expect(none.stderr).toContain('zzzzzz');
  });

  it('the press card of a blank', async () => {
    const card = await runMain(['press', 'tile-ceramic-8in'], { cwd: '.' });
    expect([card.code, card.stderr]).toEqual([0, '']);
    expect(card.stdout).toMatch(/400 F/);
    const json = await runMain(['press', 'tile-ceramic-8in', '--json'], { cwd: '.' });
    expect(JSON.parse(json.stdout)).toMatchObject({ schemaVersion: 1, blank: { id: 'tile-ceramic-8in' } });
  });
});
