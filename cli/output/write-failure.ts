import type { FolderOption } from './publish-file.ts';

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EFBIG: 'the file is larger than the disk or your limits allow',
  ENOTDIR: 'a part of the folder path is a file',
  EEXIST: 'the folder path is that of a file',
  EISDIR: 'a folder has that name',
  ENOTEMPTY: 'a folder has that name',
  ENAMETOOLONG: 'the path is too long for the disk',
  ELOOP: 'its links lead in a circle',
  EBUSY: 'another program holds it',
  EIO: 'the disk reports a fault',
  ENOENT: 'the folder went away',
};

/** What could not be written, why, and how to mend it; the system's own code stands beside the reason. */
export function tellWhyNotWritten(
  path: string,
  cause: unknown,
  folderOption: FolderOption = '--out',
): string {
  return `Cannot write "${path}": ${whyNotWritten(cause)}. Mend that, or give another folder with ${folderOption}.`;
}

/** Why, as part of a sentence. */
export function whyNotWritten(cause: unknown): string {
  const code = (cause as NodeJS.ErrnoException).code;
  const told = code === undefined ? undefined : REASONS[code];
  if (told) return `${told} (${code})`;
  return cause instanceof Error ? cause.message : String(cause);
}
