import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { PNG } from 'pngjs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { requireWitness } from '../witness.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../seeds/schema/inspection.schema.json', import.meta.url), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);
const PROFILE = new URL('../../seeds/conditions/coated-reference.icc', import.meta.url).pathname;

const JOBS = {
  'a piece as PNG': [],
  'a clear piece as PNG': ['--background', 'transparent'],
  'a piece as TIFF': ['--format', 'tiff'],
  'inks as TIFF': ['--printer-profile', PROFILE],
  'a page as PNG': ['--sheet', 'a6', '--format', 'png', '--ppi', '100'],
} as const;

/** A print-ready file in a fresh folder, and what `inspect` says of it. */
async function prepare(words: readonly string[]) {
  const cwd = makeFolder({ 'pear.png': makeArt() });
  const run = await runMain(['pear.png', '--blank', '40x30mm', '--width', '2mm', ...words], { cwd });
  const file = run.stdout.trim();
  expect(file, run.stderr).not.toBe('');
  return { cwd, file, path: join(cwd, file) };
}

async function inspect(cwd: string, ...files: string[]) {
  const { code, stdout } = await runMain(['inspect', ...files, '--json'], { cwd });
  const document = JSON.parse(stdout);
  expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
  return { code, results: document.results };
}

describe('blankcheck inspect', () => {
  it.each(Object.entries(JOBS))('finds %s unchanged, at its true size', async (_, words) => {
    const { cwd, file } = await prepare(words);
    const { code, results } = await inspect(cwd, file);
    expect(code).toBe(0);
    const [{ verdict, file: facts, record, changes }] = results;
    expect({ verdict, changes }).toEqual({ verdict: 'unchanged', changes: [] });
    expect(record).toMatchObject({ blankId: '40x30mm', mirrored: true });
    expect(Math.abs(facts.statedMm.width - record.widthMm)).toBeLessThan(25.4 / record.ppi);
    expect(Math.abs(facts.statedMm.height - record.heightMm)).toBeLessThan(25.4 / record.ppi);
  });

  it('tells that a page of a printer with a corrected scale is unchanged', async () => {
    const printer = JSON.stringify({
      name: 'shed',
      paper: 'a6',
      driverMirrors: false,
      scaleCorrection: { scan: 1.004, feed: 0.997 },
    });
    const cwd = makeFolder({ 'pear.png': makeArt(), 'shed.json': printer });
    const words = ['--sheet', 'a6', '--format', 'png', '--ppi', '100', '--printer', 'shed.json'];
    const run = await runMain(['pear.png', '--blank', '40x30mm', '--width', '2mm', ...words], { cwd });
    expect(run.stdout, run.stderr).not.toBe('');
    const { results } = await inspect(cwd, run.stdout.trim());
    expect(results[0], run.stderr).toMatchObject({
      verdict: 'unchanged',
      file: { statedMm: { width: expect.closeTo(105, 0) } },
    });
  });

  it('finds one pixel that was changed', async () => {
    const { cwd, file, path } = await prepare([]);
    const bytes = readFileSync(path);
    const png = PNG.sync.read(bytes);
    png.data[0] = 254;
    // The record is kept as an editor would keep it: it stands before the picture's data.
    const kept = bytes.subarray(0, bytes.indexOf('IDAT') - 4);
    const drawn = PNG.sync.write(png, { colorType: 2 });
    writeFileSync(path, Buffer.concat([kept, drawn.subarray(drawn.indexOf('IDAT') - 4)]));
    const { code, results } = await inspect(cwd, file);
    expect(code).toBe(1);
    expect(results[0]).toMatchObject({ verdict: 'changed', changes: ['pixels'] });
  });

  it('finds another density, an orientation and a profile, one at a time, made by exiftool', async (context) => {
    requireWitness(context, 'exiftool');
    const changed = async (words: readonly string[], ...args: string[]) => {
      const { cwd, file, path } = await prepare(words);
      execFileSync('exiftool', ['-q', '-overwrite_original', ...args, path]);
      return (await inspect(cwd, file)).results[0].changes;
    };
    expect(await changed([], '-PNG-pHYs:PixelsPerUnitX=5906')).toEqual(['density']);
    expect(await changed(['--format', 'tiff'], '-XResolution=150')).toEqual(['density']);
    expect(await changed(['--format', 'tiff'], '-IFD0:Orientation#=3')).toEqual(['orientation']);
    expect(await changed(['--format', 'tiff'], '-ICC_Profile=')).toEqual(['profile']);
  });

  it('says of other pictures, and of one saved without its metadata, that they are none', async () => {
    const { cwd, file, path } = await prepare([]);
    writeFileSync(join(cwd, 'saved.png'), await sharp(path).png().toBuffer());
    const { code, results } = await inspect(cwd, file, 'saved.png', 'pear.png');
    expect(code).toBe(1);
    expect(results.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'unchanged',
      'not-print-ready',
      'not-print-ready',
    ]);
  });

  it('goes on past what cannot be read', async () => {
    const { cwd, file, path } = await prepare([]);
    writeFileSync(join(cwd, 'torn.png'), readFileSync(path).subarray(0, 500));
    writeFileSync(join(cwd, 'empty.png'), '');
    writeFileSync(join(cwd, 'note.txt'), 'hello');
    const { code, results } = await inspect(cwd, 'torn.png', 'empty.png', 'note.txt', file);
    expect(code).toBe(1);
    expect(results.map(({ error }: { error: { code: string } | null }) => error?.code)).toEqual([
      'damaged',
      'empty-file',
      'unsupported-format',
      undefined,
    ]);
  });

  it.each([
    [['inspect'], 'missing-artwork'],
    [['inspect', 'nothing.png'], 'no-such-file'],
    [['inspect', 'pear.png', '--blank', '40x30mm'], 'bad-option'],
  ])('%j is %s', async (args, code) => {
    const run = await runMain(args, { cwd: makeFolder({ 'pear.png': makeArt() }) });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
  });
});
