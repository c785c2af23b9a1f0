import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createTempFiles } from '../../../cli/output/temp-files.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';

const HERE = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
const ELSEWHERE = '00000000';
const name = (machine: string, pid: number) => `.blankcheck-${machine}-${pid}-0123456789ab.tmp`;
/** The id of a process that has ended. */
const deadPid = () => spawnSync(process.execPath, ['-e', '']).pid;

describe('temporary files', () => {
  it('have names of their own, and are removed one by one or all at once', async () => {
    const folder = makeFolder();
    const temps = createTempFiles();
    const paths = [temps.create(folder), temps.create(folder), temps.create(folder)];
    expect(new Set(paths).size).toBe(3);
    for (const path of paths) writeFileSync(path, '');
    await temps.remove(paths[0]!);
    expect(listFiles(folder)).toHaveLength(2);
    temps.removeAllNow();
    expect(listFiles(folder)).toEqual([]);
  });

  it('of a killed run are removed by the next; those of a running one, of another machine, of others stay', async () => {
    const alive = name(HERE, process.ppid);
    const remote = name(ELSEWHERE, deadPid());
    const foreign = ['.blankcheck-notes.tmp', 'pear.tmp', `x${name(HERE, 1)}`];
    const folder = makeFolder(
      Object.fromEntries([name(HERE, deadPid()), alive, remote, ...foreign].map((file) => [file, ''])),
    );
    await createTempFiles().sweep(folder);
    expect(listFiles(folder)).toEqual([alive, remote, ...foreign].sort());
  });

  it('of another run in the same process stay, until that run is done with them', async () => {
    const folder = makeFolder();
    const [first, second] = [createTempFiles(), createTempFiles()];
    const held = first.create(folder);
    writeFileSync(held, '');
    await second.sweep(folder);
    expect(listFiles(folder)).toHaveLength(1);
    first.removeAllNow();
    expect(listFiles(folder)).toEqual([]);
  });

  it('of a process that had our id before us are removed, our own are not', async () => {
    const folder = makeFolder({ [name(HERE, process.pid)]: '' });
    const temps = createTempFiles();
    const mine = temps.create(folder);
    writeFileSync(mine, '');
    await temps.sweep(folder);
    expect(listFiles(folder).map((file) => join(folder, file))).toEqual([mine]);
  });

  it('are removed after a day, whoever made them', async () => {
    const [old, fresh] = [name(ELSEWHERE, 1), name(HERE, process.ppid)];
    const folder = makeFolder({ [old]: '', [fresh]: '' });
    const yesterday = Date.now() / 1000 - 25 * 3600;
    utimesSync(join(folder, old), yesterday, yesterday);
    await createTempFiles().sweep(folder);
    expect(listFiles(folder)).toEqual([fresh]);
  });

  it('a folder that is not there has none', async () => {
    await expect(createTempFiles().sweep(join(makeFolder(), 'none'))).resolves.toBeUndefined();
  });
});
