import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { RUN_RECORD_NAME } from '../../../cli/output/run-record-name.ts';
import { makeArt } from '../art.ts';
import { makeFolder } from '../temp-folder.ts';
import { buildCommand, startCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

const MANY = Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`beds/${index}.png`, makeArt()]));
const WORDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out', '--jobs', '2'];

const filesIn = (folder: string) => (existsSync(folder) ? readdirSync(folder) : []);
const isWritten = (name: string) => !name.endsWith('.tmp') && name !== RUN_RECORD_NAME;

async function firstFile(folder: string): Promise<void> {
  while (!filesIn(folder).some(isWritten)) await wait(5);
}

describe('a run in a pool', () => {
  it('goes on where the folder of its art vanishes, and tells what it could not read', async () => {
    const cwd = makeFolder(MANY);
    const { child, finished } = startCommand([...WORDS, '--json'], { cwd });
    child.stdin.end();
    await firstFile(join(cwd, 'out'));
    rmSync(join(cwd, 'beds'), { recursive: true });
    const { code, stdout, stderr } = await finished;
    expect([code, stderr.includes('[fault]')]).toEqual([1, false]);
    const { results } = JSON.parse(stdout) as {
      results: { status: string; error: { code: string } | null }[];
    };
    const lost = results.filter(({ status }) => status === 'unreadable');
    expect(results).toHaveLength(40);
    expect(new Set(lost.map(({ error }) => error!.code))).toEqual(new Set(['cannot-read']));
    expect(filesIn(join(cwd, 'out')).filter(isWritten)).toHaveLength(40 - lost.length);
    expect(filesIn(join(cwd, 'out')).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it('ends at once with its processes at a second interrupt, and leaves no temporary file', async () => {
    const cwd = makeFolder(MANY);
    const { child, finished } = startCommand(WORDS, { cwd });
    child.stdin.end();
    await firstFile(join(cwd, 'out'));
    const judging = execFileSync('ps', ['-o', 'pid=', '--ppid', String(child.pid)], { encoding: 'utf8' })
      .split('\n')
      .map(Number)
      .filter((pid) => pid > 0);
    expect(judging.length).toBeGreaterThan(0);
    child.kill('SIGTERM');
    child.kill('SIGTERM');
    const { code, signal } = await finished;
    // Signals of one kind that come together may be one: then it ends as after the first.
    expect(code === 143 || signal === 'SIGTERM').toBe(true);
    for (let left = judging; left.length > 0; await wait(20)) left = left.filter(isAlive);
    expect(filesIn(join(cwd, 'out')).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });
});

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
