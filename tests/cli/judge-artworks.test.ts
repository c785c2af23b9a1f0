import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createTempFiles, type TempFiles } from '../../cli/output/temp-files.ts';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import type { RunReport } from '../../src/index.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, putFiles, readText } from './temp-folder.ts';

const ART = makeArt();
const SHARP = ['--blank', '40x40mm', '--width', '2mm'];
const BLURRED = ['--blank', '40x40mm', '--width', '20mm'];

async function reportOf(args: readonly string[], cwd: string): Promise<RunReport> {
  const { stdout } = await runMain([...args, '--json'], { cwd });
  return JSON.parse(stdout) as RunReport;
}

describe('--json', () => {
  it('gives one document with a result for each artwork, in their order', async () => {
    const pack = writeZip([{ name: 'pear.png', content: ART, crc32: 1 }]);
    const cwd = makeFolder({ 'b.png': ART, 'a.png': ART.slice(0, -20), 'pack.zip': pack });
    const { summary, results, schemaVersion } = await reportOf(['b.png', 'a.png', 'pack.zip', ...SHARP], cwd);
    expect(schemaVersion).toBe(1);
    expect(summary).toEqual({ artworks: 3, ready: 1, look: 0, stop: 0, unreadable: 2, passedOver: 0 });
    expect(
      results.map(({ artwork, status, error, output }) => [
        artwork.path,
        status,
        error?.code ?? null,
        output?.path ?? null,
      ]),
    ).toEqual([
      ['b.png', 'ready', null, 'print-ready/b.40x40mm.png'],
      ['a.png', 'unreadable', 'damaged', null],
      ['pack.zip/pear.png', 'unreadable', 'archive-damaged', null],
    ]);
    expect(results[2]!.artwork.sha256).toBeNull();
  });

  it('says in `error` why nothing was written, and keeps the verdict', async () => {
    const cwd = makeFolder({ 'pear.png': ART, 'print-ready/pear.40x40mm.png': 'old', file: '' });
    const exists = await reportOf(['pear.png', ...SHARP], cwd);
    expect(exists.results[0]).toMatchObject({
      status: 'ready',
      error: { code: 'file-exists' },
      output: null,
    });
    const blocked = await reportOf(['pear.png', ...SHARP, '--out', 'file'], cwd);
    expect(blocked.results[0]).toMatchObject({
      status: 'ready',
      error: { code: 'cannot-write' },
      output: null,
    });
    expect(readText(cwd, 'print-ready/pear.40x40mm.png')).toBe('old');
  });

  it('has no error where nothing was to be written: the verdict is stop, a check, a dry run', async () => {
    const cwd = makeFolder({ 'pear.png': ART, 'print-ready/pear.40x40mm.png': 'old' });
    for (const args of [
      ['pear.png', ...BLURRED],
      ['check', 'pear.png', ...SHARP],
      ['pear.png', ...SHARP, '--dry-run'],
    ]) {
      const { results } = await reportOf(args, cwd);
      expect(results[0]).toMatchObject({ error: null, output: null });
      expect(results[0]!.plan.length).toBeGreaterThan(0);
    }
  });

  it('--anyway writes, and changes neither the verdict nor the exit code', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { results } = await reportOf(['pear.png', ...BLURRED, '--anyway'], cwd);
    expect(results[0]).toMatchObject({ status: 'stop', error: null, output: { mirrored: true } });
    expect((await runMain(['pear.png', ...BLURRED, '--anyway', '--force'], { cwd })).code).toBe(1);
  });
});

describe('print-ready files', () => {
  it('are passed over in folders and archives and counted, and stop where they are named', async () => {
    const cwd = makeFolder({ 'beds/pear.png': ART });
    const first = await reportOf(['beds', ...SHARP], cwd);
    const made = first.results[0]!.output!.path;
    putFiles(cwd, { 'pack.zip': writeZip([{ name: 'made.png', content: readFileSync(join(cwd, made)) }]) });
    const again = await reportOf(['beds', ...SHARP, '--recursive', '--force'], cwd);
    expect(again.summary).toMatchObject({ artworks: 1, passedOver: 1 });
    const named = await reportOf(['check', made, ...SHARP], cwd);
    expect(named.results[0]!.status).toBe('stop');
    expect(named.results[0]!.outcomes).toContainEqual(
      expect.objectContaining({ check: 'already-prepared', status: 'found' }),
    );
    const only = await runMain(['beds/print-ready', 'pack.zip', ...SHARP], { cwd });
    expect(only.code).toBe(2);
    expect(only.stderr.match(/no-artwork-in-folder/g)).toHaveLength(2);
  });

  it('never replace an artwork of the run, not even with --force', async () => {
    const trap = makeArt([200, 40, 40]);
    const cwd = makeFolder({ 'pear.png': ART, 'pear.40x40mm.png': trap });
    const args = ['pear.png', 'pear.40x40mm.png', ...SHARP, '--out', '.', '--force'];
    const { results } = await reportOf(args, cwd);
    expect(results[0]).toMatchObject({ error: { code: 'cannot-write' }, output: null });
    expect(readFileSync(join(cwd, 'pear.40x40mm.png')).equals(trap)).toBe(true);
    expect(results[1]!.output!.path).toBe('pear.40x40mm.40x40mm.png');
  });

  it('are replaced with --force where they lie in the very folder that is walked', async () => {
    const cwd = makeFolder({ 'beds/pear.png': ART });
    const again = ['beds', '--recursive', ...SHARP, '--force'];
    await runMain(again, { cwd });
    const { results, summary } = await reportOf(again, cwd);
    expect(results.map(({ error, output }) => [error, output?.path])).toEqual([
      [null, 'beds/print-ready/pear.40x40mm.png'],
    ]);
    expect(summary.passedOver).toBe(1);
  });

  it('of two runs over the same art have the same bytes, and the art is as it was', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const before = statSync(join(cwd, 'pear.png'));
    await runMain(['pear.png', ...SHARP], { cwd });
    await runMain(['pear.png', ...SHARP, '--out', 'again'], { cwd });
    const [one, two] = ['print-ready', 'again'].map((folder) =>
      readFileSync(join(cwd, folder, 'pear.40x40mm.png')),
    );
    expect(one!.equals(two!)).toBe(true);
    expect(readFileSync(join(cwd, 'pear.png')).equals(ART)).toBe(true);
    expect(statSync(join(cwd, 'pear.png')).mtimeMs).toBe(before.mtimeMs);
  });

  it('have portable names, whatever the art is called', async () => {
    const cwd = makeFolder({ 'what?* "pear".png': ART, [`${'x'.repeat(200)}.png`]: ART });
    const { results } = await reportOf(['.', ...SHARP], cwd);
    const names = results.map(({ output }) => output!.path);
    expect(names[0]).toBe('print-ready/what__ _pear_.40x40mm.png');
    expect(names[1]).toMatch(/^print-ready\/x+~[0-9a-f]{8}\.40x40mm\.png$/);
  });
});

describe('the report for people', () => {
  it('tells the verdict first and the file last, and how many there were', async () => {
    const cwd = makeFolder({ 'a.png': ART, 'b.png': ART });
    const { stderr } = await runMain(['a.png', 'b.png', ...SHARP], { cwd });
    expect(stderr).toMatch(/^READY TO PRINT: a\.png/);
    expect(stderr.indexOf('print-ready/a.40x40mm.png')).toBeLessThan(stderr.indexOf('READY TO PRINT: b.png'));
    expect(stderr.trimEnd().split('\n').at(-1)).toBe('2 artworks: 2 READY TO PRINT');
  });

  it('with --quiet tells only what went wrong', async () => {
    const cwd = makeFolder({ 'a.png': ART, 'b.png': 'damaged' });
    const { stderr, stdout } = await runMain(['a.png', 'b.png', ...SHARP, '--quiet'], { cwd });
    expect(stderr).toMatch(/^CANNOT READ: b\.png/);
    expect(stderr).not.toContain('a.png');
    expect(stdout).toBe('print-ready/a.40x40mm.png\n');
    expect((await runMain(['a.png', ...SHARP, '--quiet', '--force'], { cwd })).stderr).toBe('');
  });

  it('with --quiet tells what the exit code is for', async () => {
    const cwd = makeFolder({ 'a.png': ART });
    const soft = ['check', 'a.png', '--blank', '40x40mm', '--width', '2.4mm', '--quiet'];
    expect(await runMain(soft, { cwd })).toEqual({ code: 0, stdout: '', stderr: '' });
    const strict = await runMain([...soft, '--fail-on', 'advice'], { cwd });
    expect(strict.code).toBe(1);
    expect(strict.stderr).toContain('effective-resolution/below-good');
  });

  it('has colours only where they are asked for, and data never has', async () => {
    const cwd = makeFolder({ 'a.png': ART });
    const plain = await runMain(['check', 'a.png', ...SHARP], { cwd });
    const forced = await runMain(['check', 'a.png', ...SHARP, '--json'], { cwd, env: { FORCE_COLOR: '1' } });
    const forbidden = await runMain(['check', 'a.png', ...SHARP, '--no-color'], {
      cwd,
      env: { FORCE_COLOR: '1' },
    });
    expect(plain.stderr).not.toContain('\u001b');
    expect(forbidden.stderr).toBe(plain.stderr);
    expect(forced.stderr).toContain('\u001b[');
    expect(forced.stdout).not.toContain('\u001b');
  });

  it('lets no file name steer the terminal', async () => {
    const name = 'pear\u001b[2J\u202e.png';
    const cwd = makeFolder({ [name]: ART });
    for (const args of [[name], ['\u001b[2Jnone.png'], ['--\u001b[2J'], ['--blank', '\u001b[2J', name]]) {
      const { stderr } = await runMain([...SHARP, ...args], { cwd });
      expect(stderr).not.toContain('\u001b');
      expect(stderr).not.toContain('\u202e');
      expect(stderr).toContain('\\u001b[2J');
    }
  });
});

describe('a run that is interrupted', () => {
  it.each([
    ['finishes an artwork of which a file has its name', 1, ['pear.40x40mm.png', 'pear.40x40mm.proof.png']],
    ['tells of no artwork of which none has', 0, []],
  ])('%s, and tells all that it wrote', async (_, whenRemoved, written) => {
    const cwd = makeFolder({ 'pear.png': ART });
    const interrupt = new AbortController();
    const files = createTempFiles();
    let removed = 0;
    const stopWhen = () => removed === whenRemoved && interrupt.abort({ interruptedBy: 'SIGINT' });
    const temps: TempFiles = {
      ...files,
      create(folder) {
        stopWhen();
        return files.create(folder);
      },
      async remove(path) {
        await files.remove(path);
        removed += 1;
        stopWhen();
      },
    };
    const words = ['pear.png', ...SHARP, '--out', 'o', '--proof', 'o', '--picture', 'o', '--json'];
    const { code, stdout } = await runMain(words, { cwd, temps, interrupt: interrupt.signal });
    expect(code).toBe(130);
    const { results } = JSON.parse(stdout) as RunReport;
    const told = results.flatMap(({ output, proof, picture }) => [output, proof, picture]);
    const paths = told.flatMap((file) => (file && 'path' in file ? [file.path] : []));
    expect(listFiles(cwd).filter((name) => name !== 'pear.png')).toEqual([...paths].sort());
    expect(paths).toEqual(expect.arrayContaining(written.map((name) => `o/${name}`)));
    expect(paths).toHaveLength(written.length === 0 ? 0 : 3);
  });

  it('before it began does nothing', async () => {
    const cwd = makeFolder({ 'a.png': ART });
    const interrupt = AbortSignal.abort({ interruptedBy: 'SIGTERM' });
    const { code, stdout } = await runMain(['a.png', ...SHARP], { cwd, interrupt });
    expect([code, stdout, listFiles(cwd)]).toEqual([143, '', ['a.png']]);
  });
});

describe('a fault of the program', () => {
  afterEach(() => {
    vi.doUnmock('../../src/index.ts');
    vi.resetModules();
  });

  it('is told as such, without a stack trace, costs one artwork, and makes the exit code 3', async () => {
    vi.resetModules();
    vi.doMock('../../src/index.ts', async (original) => {
      const library = await original<typeof import('../../src/index.ts')>();
      const preflight: typeof library.preflight = (source, ...rest) => {
        if (source.path === 'a.png') throw new TypeError('undefined is not a pear');
        return library.preflight(source, ...rest);
      };
      return { ...library, preflight };
    });
    const { runMain: runBroken } = await import('./run-main.ts');
    const cwd = makeFolder({ 'a.png': ART, 'b.png': ART });
    const documents = ['--csv', 'out.csv', '--report', 'out.html'];
    const { code, stdout, stderr } = await runBroken(['a.png', 'b.png', ...SHARP, ...documents], { cwd });
    expect(code).toBe(3);
    expect(stderr).toMatch(
      /^blankcheck: .*fault of the program.*a\.png.*undefined is not a pear \[fault\]$/m,
    );
    expect(stderr).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
    expect(stdout).toBe('print-ready/b.40x40mm.png\n');
    // And no output is without a row of it.
    for (const file of ['out.csv', 'out.html']) expect(readText(cwd, file)).toContain('not a pear');
    expect(stderr).toMatch(/^CANNOT READ .*fault +a\.png$/m);
    const json = await runBroken(['check', 'a.png', 'b.png', ...SHARP, '--json'], { cwd });
    const report = JSON.parse(json.stdout);
    expect(findSchemaFaults(report)).toEqual([]);
    expect([json.code, report.summary.unreadable]).toEqual([3, 1]);
    expect(report.results[0]).toMatchObject({ status: 'unreadable', error: { code: 'fault' } });
    const lines = await runBroken(['check', 'a.png', 'b.png', ...SHARP, '--json-lines'], { cwd });
    expect(lines.stdout.split('\n').filter((line) => line.includes('"fault"'))).toHaveLength(1);
  });
});
