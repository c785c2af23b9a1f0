import { execFileSync, spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, watch } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { RUN_RECORD_NAME } from '../../../cli/output/run-record-name.ts';
import { makeArt } from '../art.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';
import { buildCommand, runCommand, startCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

const ART = makeArt();
const MANY = Object.fromEntries(Array.from({ length: 60 }, (_, index) => [`beds/${index}.png`, ART]));
const WORDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'];

const isTemp = (name: string) => name.endsWith('.tmp');
const filesIn = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name !== RUN_RECORD_NAME)
    .sort();

/** When the first file is written, others are under way. */
async function firstFile(folder: string): Promise<void> {
  const written = () => existsSync(folder) && filesIn(folder).some((name) => !isTemp(name));
  while (!written()) await wait(5);
}

/** Until then Ctrl-C would end the process before it could tidy up; where the system does not tell, a while. */
async function untilItCatches(pid: number): Promise<void> {
  const status = `/proc/${pid}/status`;
  const caught = () => BigInt(`0x${/^SigCgt:\s*([0-9a-f]+)/m.exec(readFileSync(status, 'utf8'))?.[1] ?? 0}`);
  // The first of them, SIGHUP: Node itself catches SIGINT from the start.
  if (existsSync(status)) while ((caught() & 1n) === 0n) await wait(20);
  await wait(existsSync(status) ? 200 : 1500);
}

describe('an interrupt', () => {
  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)(
    '%s ends the run, tells what was done, and leaves no temporary file',
    async (signal, expected) => {
      const cwd = makeFolder(MANY);
      const started = startCommand(WORDS, { cwd });
      await firstFile(join(cwd, 'out'));
      started.child.kill(signal);
      const { code, stdout, stderr } = await started.finished;
      const written = stdout.split('\n').filter((line) => line !== '');
      expect(code).toBe(expected);
      expect(stderr).toMatch(/^blankcheck: interrupted; /m);
      expect(written.length).toBeGreaterThan(0);
      expect(written.length).toBeLessThan(60);
      expect(filesIn(join(cwd, 'out'))).toEqual(written.map((path) => path.replace('out/', '')).sort());
    },
  );

  it('among proofs leaves whole ones only, each told, and no temporary file', async () => {
    const cwd = makeFolder(MANY);
    const { child, finished } = startCommand([...WORDS, '--proof', 'proofs'], { cwd });
    await firstFile(join(cwd, 'proofs'));
    child.kill('SIGINT');
    const { code, stdout } = await finished;
    expect(code).toBe(130);
    const told = stdout.split('\n').filter((line) => line !== '');
    const inFolder = (folder: string) => filesIn(join(cwd, folder)).map((name) => `${folder}/${name}`);
    const proofs = inFolder('proofs');
    expect(proofs.length).toBeGreaterThan(0);
    expect(proofs.length).toBeLessThan(60);
    expect([...inFolder('out'), ...proofs].sort()).toEqual(told.sort());
    for (const path of proofs) expect(PNG.sync.read(readFileSync(join(cwd, path))).width).toBeGreaterThan(60);
  });

  it('ends the waiting for standard input', async () => {
    const cwd = makeFolder();
    const { child, finished } = startCommand(['-', ...WORDS.slice(1)], { cwd });
    await untilItCatches(child.pid!);
    child.kill('SIGINT');
    expect((await finished).code).toBe(130);
    expect(listFiles(cwd)).toEqual([]);
  });

  it.each(['SIGINT', 'SIGTERM'] as const)('%s ends the waiting for a pipe', async (name) => {
    const cwd = makeFolder();
    const pipe = join(cwd, 'pipe.png');
    execFileSync('mkfifo', [pipe]);
    // A writer that holds it open and writes nothing.
    const writer = spawn('sh', ['-c', 'exec sleep 100 > pipe.png'], { cwd });
    const { child, finished } = startCommand(['pipe.png', ...WORDS.slice(1)], { cwd });
    await untilItCatches(child.pid!);
    child.kill(name);
    const { code, signal } = await finished;
    writer.kill();
    expect([code, signal]).toEqual([name === 'SIGINT' ? 130 : 143, null]);
  });

  it('a second one ends the process at once, also where the first cannot', async () => {
    // Opening a pipe that nobody writes to waits for ever, and nothing can call it back.
    const cwd = makeFolder({ 'wait.mjs': "import { open } from 'node:fs'; open('pipe', () => {});" });
    execFileSync('mkfifo', [join(cwd, 'pipe')]);
    const { child, finished } = startCommand(['--version'], { cwd, node: ['--import', './wait.mjs'] });
    await untilItCatches(child.pid!);
    child.kill('SIGINT');
    await wait(200);
    expect(child.exitCode).toBeNull();
    child.kill('SIGINT');
    expect((await finished).signal).toBe('SIGINT');
  });
});

describe('a kill', () => {
  it('leaves no part of a file under its final name, and the next run removes what it left', async () => {
    const cwd = makeFolder({ ...MANY, 'out/': '' });
    const whole = makeFolder({ 'beds/0.png': ART });
    await runCommand(WORDS, { cwd: whole });
    const expected = readFileSync(join(whole, 'out', '0.60x60mm.png'));
    let left = 0;
    for (let tries = 0; tries < 6; tries += 1) {
      // Of several, the processes that judge them tidy up when the run is gone; of one there is nobody left to.
      const what = tries % 2 === 0 ? 'beds' : 'beds/0.png';
      const { child, finished } = startCommand([what, ...WORDS.slice(1), '--force', '--fresh'], { cwd });
      await firstTempFile(join(cwd, 'out'));
      child.kill('SIGKILL');
      expect((await finished).signal).toBe('SIGKILL');
      left += filesIn(join(cwd, 'out')).filter(isTemp).length;
      for (const name of filesIn(join(cwd, 'out')).filter((file) => !isTemp(file)))
        expect(readFileSync(join(cwd, 'out', name)).equals(expected)).toBe(true);
    }
    expect(left).toBeGreaterThan(0);
    const { code } = await runCommand([...WORDS, '--force'], { cwd });
    expect(code).toBe(0);
    expect(filesIn(join(cwd, 'out'))).toEqual(
      Object.keys(MANY)
        .map((path) => `${path.replace(/^beds\/|\.png$/g, '')}.60x60mm.png`)
        .sort(),
    );
  });
});

/** When a temporary file is made in the folder. */
async function firstTempFile(folder: string): Promise<void> {
  const watcher = watch(folder);
  await new Promise<void>((resolve) => {
    watcher.on('change', (_, name) => {
      if (isTemp(String(name))) resolve();
    });
  });
  watcher.close();
}
