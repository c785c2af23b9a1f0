import { existsSync, rmdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createOutFolders } from '../../../cli/output/out-folders.ts';
import { makeFolder } from '../temp-folder.ts';

describe('a folder of a run that begins again', () => {
  it.each(['out', 'out/deep/er'])('is made anew where it was taken away: %s', async (name) => {
    const folder = join(makeFolder(), name);
    const folders = createOutFolders();
    await folders.begin([folder]);
    rmdirSync(folder);
    await folders.begin([folder]);
    expect(await folders.expect(folder)).toBe(true);
  });

  it('is not made where its disk went away: that would lie beneath the mount point', async () => {
    const cwd = makeFolder();
    const folder = join(cwd, 'out');
    const pulled = createOutFolders(new Map([[folder, statSync(cwd).dev + 1]]));
    await pulled.begin([folder]);
    expect(existsSync(folder)).toBe(false);
    await expect(pulled.expect(folder)).rejects.toThrow();
  });
});
