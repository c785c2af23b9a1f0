import { existsSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { makeArt } from '../art.ts';
import { runMain } from '../run-main.ts';
import { makeFolder, readText } from '../temp-folder.ts';
import { buildCommand, runCommand } from './built-command.ts';
import { finalFiles, makeNoise, mountDisk, tempsIn } from './output-disks.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

type Run = (args: readonly string[], cwd: string) => Promise<{ code: number | null; stdout: string }>;
const WAYS: readonly (readonly [string, Run])[] = [
  ['in a pool', (args, cwd) => runCommand([...args, '--jobs', '2'], { cwd })],
  ['without one', (args, cwd) => runMain(args, { cwd })],
];

interface Result {
  readonly artwork: { readonly path: string };
  readonly status: string;
  readonly output: { readonly path: string } | null;
  readonly error: { readonly code: string } | null;
}
const resultsOf = (stdout: string) => (JSON.parse(stdout) as { results: Result[] }).results;
const written = (results: readonly Result[]) =>
  results.flatMap(({ output }) => (output ? [output.path.split('/').at(-1)!] : [])).sort();
/** Every artwork keeps its verdict and place, and either its file was written or it says why not. */
function expectAllTold(results: readonly Result[], names: readonly string[]): void {
  expect(results.map(({ artwork }) => artwork.path)).toEqual(names);
  expect(new Set(results.map(({ status }) => status))).toEqual(new Set(['ready']));
  for (const { output, error } of results) expect(error?.code).toBe(output ? undefined : 'cannot-write');
}

const BEDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'];
const PLANTS = Array.from({ length: 40 }, (_, index) => `beds/${String(index).padStart(2, '0')}.png`);
const FEW = PLANTS.slice(0, 4);
const plants = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, makeArt()]));

describe.each(WAYS)('a folder run %s', (_, run) => {
  it('on a disk that fills up writes whole files as long as they fit, and the rest once there is room', async (context) => {
    const names = PLANTS.slice(0, 6);
    const cwd = makeFolder(Object.fromEntries(names.map((name, index) => [name, makeNoise(index, 300)])));
    const disk = mountDisk(join(cwd, 'disk'), 'size=1m');
    if (disk === null) return context.skip('mounting is refused');
    try {
      const args = ['beds', '--blank', '40x40mm', '--width', '25mm', '--json'];
      await run([...args, '--out', 'whole'], cwd);
      const whole = finalFiles(join(cwd, 'whole'));
      const out = join(cwd, 'disk', 'out');
      const first = await run([...args, '--out', 'disk/out'], cwd);
      const results = resultsOf(first.stdout);
      expect(first.code).toBe(1);
      expectAllTold(results, names);
      expect(whole.size).toBe(6);
      // 65 pages of 4 KiB each: three have room in 1 MiB; two that are written at once may both find none.
      expect([1, 2, 3]).toContain(written(results).length);
      const there = finalFiles(out);
      expect([...there.keys()]).toEqual(written(results));
      for (const [name, bytes] of there) expect(bytes === whole.get(name), name).toBe(true);
      expect(tempsIn(out)).toEqual([]);
      disk.resize('8m');
      const second = await run([...args, '--out', 'disk/out'], cwd);
      expect([second.code, written(resultsOf(second.stdout)).length]).toEqual([0, 6]);
      expect(finalFiles(out)).toEqual(whole);
    } finally {
      disk.end();
    }
  });

  it('on a disk that may only be read says so of each, and judges all', async (context) => {
    const cwd = makeFolder(plants(FEW));
    const disk = mountDisk(join(cwd, 'out'), 'ro,size=1m');
    if (disk === null) return context.skip('mounting is refused');
    try {
      const { code, stdout } = await run([...BEDS, '--json', '--csv', 'out/table.csv'], cwd);
      expect(code).toBe(1);
      expectAllTold(resultsOf(stdout), FEW);
      expect([written(resultsOf(stdout)), finalFiles(join(cwd, 'out')).size]).toEqual([[], 0]);
      expect((await run(BEDS, cwd)).stdout).toBe('');
    } finally {
      disk.end();
    }
  });

  it('into a folder that is a file leaves it as it is, says so of each, and judges all', async () => {
    const cwd = makeFolder({ ...plants(FEW), out: 'mulch' });
    const { code, stdout } = await run([...BEDS, '--json'], cwd);
    expect(code).toBe(1);
    expectAllTold(resultsOf(stdout), FEW);
    expect(written(resultsOf(stdout))).toEqual([]);
    expect(readText(cwd, 'out')).toBe('mulch');
  });

  it.each(['nothing', 'a file'])(
    'whose output folder vanishes, with %s in its place, claims what it wrote and no more',
    async (left) => {
      const cwd = makeFolder(plants(PLANTS));
      const [out, gone] = [join(cwd, 'out'), join(cwd, 'gone')];
      const ending = run([...BEDS, '--json'], cwd);
      while (finalFiles(out).size === 0) await wait(2);
      renameSync(out, gone);
      if (left === 'a file') writeFileSync(out, 'mulch');
      const { code, stdout } = await ending;
      const results = resultsOf(stdout);
      expectAllTold(results, PLANTS);
      expect([...finalFiles(gone).keys()].sort()).toEqual(written(results));
      expect(code).toBe(1);
      // On a drive that was pulled it would come to lie beneath its mount point.
      expect(existsSync(out)).toBe(left === 'a file');
      expect(written(results).length).toBeLessThan(40);
      if (left === 'a file') return;
      const again = await run([...BEDS, '--json'], cwd);
      expect([again.code, finalFiles(out).size]).toEqual([0, 40]);
    },
  );

  it.for(['disk/out', 'disk'])(
    'whose drive is pulled leaves nothing beneath it, in %s',
    async (folder, context) => {
      const cwd = makeFolder(plants(PLANTS));
      const disk = mountDisk(join(cwd, 'disk'), 'size=8m');
      if (disk === null) return context.skip('mounting is refused');
      const ending = run([...BEDS.slice(0, -1), folder, '--csv', `${folder}/table.csv`, '--json'], cwd);
      while (finalFiles(join(cwd, folder)).size === 0) await wait(2);
      disk.pull();
      const { code, stdout } = await ending;
      expect(code).toBe(1);
      expectAllTold(resultsOf(stdout), PLANTS);
      expect(written(resultsOf(stdout)).length).toBeLessThan(40);
      expect(readdirSync(join(cwd, 'disk'))).toEqual([]);
    },
  );

  it('makes no folder where nothing is written', async () => {
    const cwd = makeFolder(Object.fromEntries(FEW.map((name) => [name, makeArt([200, 30, 30], 8)])));
    const { code, stdout } = await run([...BEDS, '--json'], cwd);
    expect([code, written(resultsOf(stdout))]).toEqual([1, []]);
    expect(readdirSync(cwd)).toEqual(['beds']);
  });
});
