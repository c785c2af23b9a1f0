import { readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TypedOptions } from '../../../cli/arguments.ts';
import { watchFolders } from '../../../cli/commands/watch-folders.ts';
import { createTempFiles } from '../../../cli/output/temp-files.ts';
import { makeArt } from '../art.ts';
import { runMain } from '../run-main.ts';
import { listFiles, makeFolder, putFiles } from '../temp-folder.ts';

const ART = makeArt();
const OTHER = makeArt([20, 90, 70]);
const CUT_OFF = ART.subarray(0, 60);
const OPTIONS: TypedOptions = { blank: '60x60mm', width: '2mm', out: 'out', jsonLines: true };

/** Watches `beds`; before each look, a second after the one before, what is planned for that second happens. */
async function watch(
  cwd: string,
  events: Readonly<Record<number, () => void>>,
  {
    seconds = 12,
    options = OPTIONS,
    command = 'prepare',
  }: {
    readonly seconds?: number;
    readonly options?: TypedOptions;
    readonly command?: 'prepare' | 'check';
  } = {},
) {
  const interrupt = new AbortController();
  const out: string[] = [];
  const err: string[] = [];
  let second = 0;
  const told: [second: number, path: string, status: string][] = [];
  const io = {
    stdin: { isTTY: false, stop: () => undefined, async *[Symbol.asyncIterator]() {} },
    stdout: {
      isTTY: false,
      write(text: string) {
        out.push(text);
        if (!text.startsWith('{"artwork"')) return;
        const { artwork, status } = JSON.parse(text);
        told.push([second, artwork.path, status]);
      },
    },
    stderr: { isTTY: false, write: (text: string) => err.push(text) },
    env: {},
    cwd,
    interrupt: interrupt.signal,
  };
  const clock = {
    nowMs: () => second * 1000,
    async sleep(ms: number) {
      expect(ms).toBe(1000);
      second += 1;
      events[second]?.();
      if (second === seconds) interrupt.abort({ interruptedBy: 'SIGINT' });
    },
  };
  const code = await watchFolders(command, ['beds'], options, io, createTempFiles(), clock);
  return { code, told, out, stderr: err.join('') };
}

describe('--watch', () => {
  it('of check tells the same at the same seconds, and writes nothing', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const { out: _out, ...options } = OPTIONS;
    const events = {
      4: () => putFiles(cwd, { 'beds/pea.png': OTHER }),
      8: () => putFiles(cwd, { 'beds/bean.png': OTHER }),
    };
    const checked = await watch(cwd, events, { command: 'check', options });
    expect(checked.code).toBe(130);
    expect(checked.told.map(([, path, status]) => [path, status])).toEqual([
      ['beds/bean.png', 'ready'],
      ['beds/pea.png', 'ready'],
      ['beds/bean.png', 'ready'],
    ]);
    expect(listFiles(cwd)).toEqual(['beds/bean.png', 'beds/pea.png']);
    putFiles(cwd, { 'beds/bean.png': ART });
    rmSync(join(cwd, 'beds/pea.png'));
    expect((await watch(cwd, events)).told).toEqual(checked.told);
  });

  it('prepares what is there and what lands, each once it rested, and ends with 130 and one summary', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART, 'beds/notes.txt': 'none' });
    const { code, told, out } = await watch(cwd, { 4: () => putFiles(cwd, { 'beds/pea.png': OTHER }) });
    expect(code).toBe(130);
    expect(told).toEqual([
      [2, 'beds/bean.png', 'ready'],
      [6, 'beds/pea.png', 'ready'],
    ]);
    expect(out.filter((line) => line.startsWith('{"summary"'))).toEqual([out.at(-1)]);
    expect(JSON.parse(out.at(-1)!).summary).toMatchObject({ artworks: 2, ready: 2 });
    expect(listFiles(join(cwd, 'out')).filter((name) => !name.startsWith('.'))).toEqual([
      'bean.60x60mm.png',
      'pea.60x60mm.png',
    ]);
  });

  it('makes the same files as a run over the folder', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART, 'beds/pea.png': OTHER });
    await watch(cwd, {}, { seconds: 4 });
    await runMain(['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'whole'], { cwd });
    for (const name of ['bean.60x60mm.png', 'pea.60x60mm.png'])
      expect(readFileSync(join(cwd, 'out', name))).toEqual(readFileSync(join(cwd, 'whole', name)));
  });

  it('tries again what could not be decoded when it has changed, and only then', async () => {
    const cwd = makeFolder({ 'beds/bean.png': CUT_OFF });
    const { told } = await watch(cwd, { 7: () => putFiles(cwd, { 'beds/bean.png': ART }) });
    expect(told).toEqual([
      [2, 'beds/bean.png', 'unreadable'],
      [9, 'beds/bean.png', 'ready'],
    ]);
  });

  it('leaves a file alone as long as it grows', async () => {
    const cwd = makeFolder({ 'beds/': '' });
    const grow = (share: number) => () =>
      putFiles(cwd, { 'beds/bean.png': ART.subarray(0, Math.ceil(ART.length * share)) });
    const { told } = await watch(cwd, { 1: grow(0.2), 2: grow(0.5), 3: grow(0.8), 4: grow(1) });
    expect(told).toEqual([[6, 'beds/bean.png', 'ready']]);
  });

  it('waits for a folder that went away, and goes on when it is back', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const { code, told, stderr } = await watch(cwd, {
      4: () => renameSync(join(cwd, 'beds'), join(cwd, 'elsewhere')),
      7: () => putFiles(cwd, { 'beds/pea.png': OTHER }),
    });
    expect(told.map(([second, path]) => [second, path])).toEqual([
      [2, 'beds/bean.png'],
      [9, 'beds/pea.png'],
    ]);
    expect(code).toBe(130);
    expect(stderr.match(/is not there|is back/g)).toEqual(['is not there', 'is back']);
  });

  it.each([
    ['its output folder, emptied and taken away', 'beds/print-ready'],
    ['the whole folder', 'beds'],
  ])('goes on writing when somebody took away %s', async (_, taken) => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const { out: _out, ...options } = OPTIONS;
    const events = {
      4: () => rmSync(join(cwd, taken), { recursive: true }),
      7: () => putFiles(cwd, { 'beds/pea.png': OTHER }),
    };
    await watch(cwd, events, { options });
    expect(listFiles(cwd)).toContain('beds/print-ready/pea.60x60mm.png');
  });

  it('never takes its own files for art, wherever they go', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const options = {
      ...OPTIONS,
      out: 'beds',
      proof: 'beds/proofs',
      picture: 'beds',
      recursive: true,
    } as const;
    const { told, stderr } = await watch(cwd, {}, { options });
    expect(told).toEqual([[2, 'beds/bean.png', 'ready']]);
    expect(stderr).not.toContain('0 artworks');
    expect(listFiles(cwd).filter((name) => name.endsWith('.png')).length).toBe(4);
  });

  it('lets no second artwork take the file of the first', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const { told } = await watch(cwd, { 4: () => putFiles(cwd, { 'beds/bean.webp': OTHER }) });
    expect(told.map(([second, path]) => [second, path])).toEqual([
      [2, 'beds/bean.png'],
      [6, 'beds/bean.webp'],
    ]);
    expect(listFiles(join(cwd, 'out')).filter((name) => !name.startsWith('.'))).toEqual([
      'bean.60x60mm.png',
      'bean.webp.60x60mm.png',
    ]);
  });

  it('replaces the file that it made of an artwork that changed', async () => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const { told } = await watch(cwd, { 4: () => putFiles(cwd, { 'beds/bean.png': OTHER }) });
    expect(told).toHaveLength(2);
    expect(told[1]).toEqual([6, 'beds/bean.png', 'ready']);
    const whole = makeFolder({ 'beds/bean.png': OTHER });
    await runMain(['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'], { cwd: whole });
    const [watched, once] = [cwd, whole].map((folder) => readFileSync(join(folder, 'out/bean.60x60mm.png')));
    expect(watched).toEqual(once);
  });

  it.each([
    [['beds', '--watch', '--json'], 'bad-option'],
    [['beds', '--watch', '--csv', 'a.csv'], 'bad-option'],
    [['none', '--watch'], 'no-such-file'],
    [['--watch'], 'missing-artwork'],
    [['beds', '--watch', '--blank', 'none-such'], 'unknown-blank'],
  ])('refuses %j', async (words, code) => {
    const cwd = makeFolder({ 'beds/bean.png': ART });
    const run = await runMain(['prepare', '--blank', '60x60mm', ...words], { cwd });
    expect([run.code, run.stdout]).toEqual([2, '']);
    expect(run.stderr).toContain(`[${code}]`);
  });
});
