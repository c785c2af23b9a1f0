import { lstat, readFile, stat } from 'node:fs/promises';
import { BlankcheckError, readPrintRecord } from '../../src/index.ts';
import type { Origin } from '../inputs/planned-artwork.ts';
import type { FolderOption } from './publish-file.ts';

/** Keeps the files that a run reads, artworks above all, from being replaced by those it writes, whatever they are called. */
export interface InputGuard {
  /**
   * `told` is how messages call the path. A print-ready file of our own that lies among the artworks is none.
   * @throws BlankcheckError `cannot-write` where the path is the file of an artwork.
   */
  refuseInput(path: string, told: string, folderOption?: FolderOption): Promise<void>;
  /**
   * The same of a file that is added to, which is written through its links; one of our own is none to add to.
   * @throws BlankcheckError `cannot-write`
   */
  refuseAppending(path: string, told: string, folderOption: FolderOption): Promise<void>;
}

export function createInputGuard(origins: readonly Origin[] | (() => readonly Origin[])): InputGuard {
  let known: Promise<ReadonlySet<string>> | null = null;
  const isInput = async (identity: string | null) => {
    if (identity === null) return false;
    known ??= identitiesOf(typeof origins === 'function' ? origins() : origins);
    return (await known).has(identity);
  };
  return {
    async refuseInput(path, told, folderOption = '--out') {
      if (!(await isInput(await identityOf(lstat, path))) || (await isOwn(path))) return;
      throw isRead(told, folderOption);
    },
    async refuseAppending(path, told, folderOption) {
      if (await isInput(await identityOf(stat, path))) throw isRead(told, folderOption);
    },
  };
}

function isRead(told: string, folderOption: FolderOption): BlankcheckError {
  return new BlankcheckError(
    'cannot-write',
    `"${told}" is read by this run, and what is read is never changed. Give another place with ${folderOption}.`,
  );
}

async function isOwn(path: string): Promise<boolean> {
  return readFile(path).then(
    (bytes) => readPrintRecord(bytes) !== null,
    () => false,
  );
}

async function identitiesOf(origins: readonly Origin[]): Promise<ReadonlySet<string>> {
  const files = origins.flatMap((origin) =>
    origin.kind === 'file' ? [origin.file] : origin.kind === 'entry' ? [origin.archive] : [],
  );
  const identities = await Promise.all([...new Set(files)].map((file) => identityOf(stat, file)));
  return new Set(identities.filter((identity) => identity !== null));
}

/** Device and number of a file, which are the same under all its names; null where there is none. */
async function identityOf(
  look: (path: string, options: { bigint: true }) => Promise<{ dev: bigint; ino: bigint }>,
  path: string,
): Promise<string | null> {
  return look(path, { bigint: true }).then(
    ({ dev, ino }) => `${dev}:${ino}`,
    () => null,
  );
}
