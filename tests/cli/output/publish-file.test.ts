import { chmodSync, existsSync, lstatSync, mkdirSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { publishFile } from '../../../cli/output/publish-file.ts';
import { createTempFiles } from '../../../cli/output/temp-files.ts';
import { listFiles, makeFolder, readText } from '../temp-folder.ts';

const NEW = new TextEncoder().encode('new');
const publish = (path: string, replace = false, signal?: AbortSignal) =>
  publishFile({ path, told: path }, NEW, { replace, temps: createTempFiles(), ...(signal && { signal }) });
const codeOf = (promise: Promise<void>) =>
  promise.then(
    () => null,
    (error: { code?: unknown }) => error.code,
  );

/** Write permissions mean nothing to root; as nobody they do. */
function withoutRootRights(): void {
  if (process.geteuid?.() !== 0) return;
  process.seteuid?.(65534);
  onTestFinished(() => process.seteuid?.(0));
}

describe('publishFile', () => {
  it('writes all of it, makes the folders, and leaves nothing else', async () => {
    const folder = makeFolder();
    await publish(join(folder, 'a/b/pear.png'));
    expect(listFiles(folder)).toEqual(['a/b/pear.png']);
    expect(readText(folder, 'a/b/pear.png')).toBe('new');
    expect(statSync(join(folder, 'a/b/pear.png')).nlink).toBe(1);
  });

  it('refuses a name that is taken, by a file, a folder or a link that leads nowhere', async () => {
    const folder = makeFolder({ 'pear.png': 'old', 'folder/': '' });
    symlinkSync('nowhere', join(folder, 'link'));
    for (const name of ['pear.png', 'folder', 'link'])
      expect(await codeOf(publish(join(folder, name)))).toBe('file-exists');
    expect(readText(folder, 'pear.png')).toBe('old');
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
    expect(listFiles(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it('of two that write the same name at once, one is refused', async () => {
    const folder = makeFolder();
    const codes = await Promise.all([1, 2, 3, 4].map(() => codeOf(publish(join(folder, 'pear.png')))));
    expect(codes.sort()).toEqual(['file-exists', 'file-exists', 'file-exists', null]);
  });

  it('replaces a file when told to, and a link without writing through it', async () => {
    const folder = makeFolder({ 'pear.png': 'old', 'target.png': 'kept' });
    symlinkSync('target.png', join(folder, 'link.png'));
    await publish(join(folder, 'pear.png'), true);
    await publish(join(folder, 'link.png'), true);
    expect(readText(folder, 'pear.png')).toBe('new');
    expect(readText(folder, 'target.png')).toBe('kept');
    expect(lstatSync(join(folder, 'link.png')).isSymbolicLink()).toBe(false);
  });

  it('says why a file cannot be written: the path is that of a file, the name that of a folder', async () => {
    const folder = makeFolder({ file: 'x', 'full/inside': '' });
    expect(await codeOf(publish(join(folder, 'file/pear.png')))).toBe('cannot-write');
    expect(await codeOf(publish(join(folder, 'full'), true))).toBe('cannot-write');
    expect(await codeOf(publish(join(folder, `${'x'.repeat(300)}.png`)))).toBe('cannot-write');
    await expect(publish(join(folder, 'file/pear.png'))).rejects.toThrow('ENOTDIR');
    expect(listFiles(folder)).toEqual(['file', 'full/inside']);
  });

  it('a folder that may not be written to', async () => {
    const folder = makeFolder();
    chmodSync(folder, 0o755);
    mkdirSync(join(folder, 'closed'), { mode: 0o555 });
    withoutRootRights();
    await expect(publish(join(folder, 'closed/pear.png'))).rejects.toMatchObject({
      code: 'cannot-write',
      message: expect.stringContaining('EACCES'),
    });
    await expect(publish(join(folder, 'closed/new/pear.png'))).rejects.toMatchObject({
      code: 'cannot-write',
    });
  });

  it('an interrupt leaves neither the file nor a temporary one, and is no error of ours', async () => {
    const folder = makeFolder();
    const reason = { interruptedBy: 'SIGINT' };
    await expect(publish(join(folder, 'pear.png'), false, AbortSignal.abort(reason))).rejects.toBe(reason);
    expect(listFiles(folder)).toEqual([]);
  });
});

describe('a file system without hard links', () => {
  afterEach(() => vi.doUnmock('node:fs/promises'));

  it('still refuses what is there and gives the name to what is not', async () => {
    vi.resetModules();
    vi.doMock('node:fs/promises', async (original) => ({
      ...(await original<typeof import('node:fs/promises')>()),
      link: () => Promise.reject(Object.assign(new Error('no links'), { code: 'EPERM' })),
    }));
    const { publishFile: publishThere } = await import('../../../cli/output/publish-file.ts');
    const folder = makeFolder({ 'pear.png': 'old' });
    const write = (name: string) =>
      publishThere({ path: join(folder, name), told: name }, NEW, {
        replace: false,
        temps: createTempFiles(),
      });
    expect(await codeOf(write('pear.png'))).toBe('file-exists');
    expect(await codeOf(write('quince.png'))).toBeNull();
    expect(listFiles(folder)).toEqual(['pear.png', 'quince.png']);
    expect(readText(folder, 'pear.png')).toBe('old');
  });
});
