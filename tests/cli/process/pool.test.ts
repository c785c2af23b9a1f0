import { execFileSync, spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { RUN_RECORD_NAME } from '../../../cli/output/run-record-name.ts';
import { writeZip } from '../../../fixtures/byte-writers/write-zip.ts';
import { makeArt } from '../art.ts';
import { runMain } from '../run-main.ts';
import { makeFolder } from '../temp-folder.ts';
import { buildCommand, runCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

const ART = makeArt();
const BEDS = { 'beds/chive.png': ART, 'beds/basil.png': ART, 'beds/dill.png': ART };
const WORDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'];

interface Told {
  readonly summary: { readonly artworks: number; readonly unreadable: number };
  readonly results: readonly {
    readonly artwork: { readonly path: string; readonly sha256: string | null };
    readonly status: string;
    readonly error: { readonly code: string } | null;
  }[];
}

const writtenIn = (folder: string) =>
  readdirSync(join(folder, 'out')).filter((name) => name !== RUN_RECORD_NAME);
const codesOf = (stdout: string) =>
  (JSON.parse(stdout) as Told).results.map(({ artwork, error }) => [artwork.path, error?.code ?? null]);

describe('a run over several artworks', () => {
  it('in processes of their own gives what they give one by one in this process', async () => {
    const files = {
      ...BEDS,
      'beds/torn.png': ART.subarray(0, 60),
      'beds/empty.jpg': '',
      'beds/note.txt': 'x',
    };
    const [pooled, single] = [makeFolder(files), makeFolder(files)];
    const ended = await runCommand([...WORDS, '--json', '--jobs', '2'], { cwd: pooled });
    const expected = await runMain([...WORDS, '--json'], { cwd: single });
    expect(ended.code).toBe(expected.code);
    expect(ended.stdout).toBe(expected.stdout);
    const names = writtenIn(single);
    expect(writtenIn(pooled)).toEqual(names);
    expect(names).toHaveLength(3);
    for (const name of names)
      expect(readFileSync(join(pooled, 'out', name))).toEqual(readFileSync(join(single, 'out', name)));
  });

  it('takes the sound one of two formats where the other cannot be unpacked, and says so', async () => {
    const zip = writeZip([
      { name: 's.png', content: ART, method: 8, packed: Buffer.alloc(ART.length, 0x07) },
      { name: 's.webp', content: ART },
    ]);
    const files = { 'a.zip': zip, 'b.zip': zip };
    const words = ['check', 'a.zip', 'b.zip', ...WORDS.slice(1, 5), '--json'];
    const ended = await runCommand([...words, '--jobs', '2'], { cwd: makeFolder(files) });
    const expected = await runMain(words, { cwd: makeFolder(files) });
    expect([ended.code, ended.stdout]).toEqual([0, expected.stdout]);
    const { results } = JSON.parse(ended.stdout);
    const beside = { insteadOf: ['s.png'], unreadableBeside: ['s.png'] };
    for (const [index, zipName] of ['a.zip', 'b.zip'].entries())
      expect(results[index]).toMatchObject({
        status: 'ready',
        artwork: { path: `${zipName}/s.webp`, ...beside },
      });
    expect(ended.stderr).toMatch(/Instead of +s\.png \(/);
  });

  it('shows the same on the page and in the pictures, bytes for bytes', async () => {
    const files = { ...BEDS, 'beds/torn.png': ART.subarray(0, 60) };
    const [pooled, single] = [makeFolder(files), makeFolder(files)];
    const words = ['check', ...WORDS.slice(0, 5), '--report', 'report.html', '--picture', 'out'];
    const ended = await runCommand([...words, '--jobs', '2'], { cwd: pooled });
    const expected = await runMain(words, { cwd: single });
    expect([ended.code, ended.stdout]).toEqual([expected.code, expected.stdout]);
    const names = writtenIn(single);
    expect([writtenIn(pooled), names.length]).toEqual([names, 4]);
    for (const name of ['report.html', ...names.map((one) => join('out', one))])
      expect(readFileSync(join(pooled, name))).toEqual(readFileSync(join(single, name)));
  });

  it('loses the one artwork that ends its process, and no other', async () => {
    const cwd = makeFolder({
      ...BEDS,
      // As a fault in native code would: nothing of ours can catch it.
      'crash.mjs': `const { emit } = process;
      process.emit = function (name, message, ...rest) {
        if (name === 'message' && message?.artwork?.path.includes('chive')) process.kill(process.pid, 'SIGSEGV');
        return emit.call(this, name, message, ...rest);
      };`,
    });
    const { code, stdout } = await runCommand([...WORDS, '--json', '--jobs', '1'], {
      cwd,
      node: ['--import', `file://${join(cwd, 'crash.mjs')}`],
    });
    expect(code).toBe(1);
    expect(codesOf(stdout)).toEqual([
      ['beds/basil.png', null],
      ['beds/chive.png', 'crashed'],
      ['beds/dill.png', null],
    ]);
    expect((JSON.parse(stdout) as Told).results[1]!.artwork.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(writtenIn(cwd)).toHaveLength(2);
  });

  it('ends an artwork that takes longer than the limit, and no other', async () => {
    const cwd = makeFolder(BEDS);
    execFileSync('mkfifo', [join(cwd, 'pipe')]);
    // A writer that holds it open and writes nothing.
    const writer = spawn('sh', ['-c', 'exec sleep 100 > pipe'], { cwd });
    const { code, stdout } = await runCommand(
      ['pipe', ...WORDS, '--json', '--jobs', '1', '--limit', 'maxArtworkSeconds=15'],
      { cwd },
    );
    writer.kill();
    expect(code).toBe(1);
    expect(codesOf(stdout).map(([, error]) => error)).toEqual(['too-slow', null, null, null]);
  });

  it('stops for a request that one of them cannot meet, and says so once', async () => {
    const cwd = makeFolder(BEDS);
    const { code, stdout, stderr } = await runCommand(
      ['beds', '--blank', 'tile-ceramic-8in', '--safe', '200mm'],
      { cwd },
    );
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr.match(/^blankcheck: /gm)).toHaveLength(1);
  });
});
