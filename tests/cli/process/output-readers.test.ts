import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { makeArt } from '../art.ts';
import { makeFolder } from '../temp-folder.ts';
import { buildCommand, startCommand } from './built-command.ts';
import { finalFiles } from './output-disks.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

const BEDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'];
const plants = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, index) => [`beds/${index}.png`, makeArt()]));

describe('the reader of a folder run', () => {
  it.each([[['--json-lines']], [[]]])(
    'that goes away early, with %j, ends the telling and not the work',
    async (more) => {
      const cwd = makeFolder(plants(40));
      const { child, finished } = startCommand([...BEDS, '--jobs', '2', '--quiet', ...more], { cwd });
      child.stdin.end();
      if (more.length > 0) child.stdout.once('data', () => child.stdout.destroy());
      else child.stdout.destroy();
      const { code, stderr } = await finished;
      expect([code, stderr]).toEqual([0, '']);
      expect(finalFiles(join(cwd, 'out')).size).toBe(40);
    },
  );

  it.skipIf(process.platform !== 'linux').each([[['--json-lines']], [[]]])(
    'that is full, with %j, is told once, and the work goes on',
    (more) => {
      const cwd = makeFolder(plants(4));
      const words = [process.execPath, buildCommand(), ...BEDS, '--jobs', '2', '--quiet', ...more];
      const shell = spawnSync('sh', ['-c', '"$0" "$@" > /dev/full', ...words], { cwd, encoding: 'utf8' });
      expect(shell.status).toBe(1);
      expect(shell.stderr.match(/\[cannot-write\]/g)).toHaveLength(1);
      expect(finalFiles(join(cwd, 'out')).size).toBe(4);
    },
  );
});
