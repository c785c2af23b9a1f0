import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { beforeAll, expect, it, vi } from 'vitest';
import { makeArt } from '../art.ts';
import { listFiles, makeFolder, putFiles } from '../temp-folder.ts';
import { buildCommand, startCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

it('a watch of a real folder prepares what lands, in processes of their own, and ends with Ctrl-C', async () => {
  const cwd = makeFolder({ 'beds/': '' });
  const words = ['prepare', 'beds', '--watch', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'];
  const { child, finished } = startCommand([...words, '--json-lines'], { cwd });
  let told = '';
  child.stderr.on('data', (text: string) => {
    told += text;
  });
  while (!told.includes('watching')) await wait(20);
  putFiles(cwd, { 'beds/bean.png': makeArt(), 'beds/pea.png': makeArt([20, 90, 70]) });
  const made = ['bean', 'pea'].map((name) => join(cwd, 'out', `${name}.60x60mm.png`));
  while (!made.every((path) => existsSync(path))) await wait(50);
  child.kill('SIGINT');
  const { code, stdout } = await finished;
  expect(code).toBe(130);
  expect(JSON.parse(stdout.trim().split('\n').at(-1)!)).toHaveProperty('summary');
  expect(listFiles(cwd).filter((name) => name.endsWith('.tmp'))).toEqual([]);
});
