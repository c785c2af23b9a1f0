import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import type { OutputPaths } from './output-paths.ts';

interface Documents {
  readonly csv?: string | boolean;
  readonly report?: string;
}

/**
 * Before anything is judged: a table or a page that would take the place of another file of the same run, also where only
 * capitals tell the names apart, as on most disks they do not; or whose own name is none of a file.
 * @throws BlankcheckError `bad-option`
 */
export function refuseSameOutputs(
  placed: readonly { readonly place: { readonly outputs: OutputPaths | undefined } }[],
  { csv, report }: Documents,
  { cwd, writes }: { readonly cwd: string; readonly writes: boolean },
): void {
  const keyOf = (path: string) => resolve(cwd, path).normalize('NFC').toLowerCase();
  const taken = new Map<string, string>();
  const take = (path: string | null | undefined, told: string) => {
    if (path != null) taken.set(keyOf(path), told);
  };
  for (const { place } of placed) {
    take(writes ? place.outputs?.printReady : null, 'a print-ready file');
    take(place.outputs?.proof, 'a proof');
    take(place.outputs?.picture, 'an annotated picture');
  }
  for (const [option, path] of [
    ['--csv', csv],
    ['--report', report],
  ] as const) {
    if (typeof path !== 'string') continue;
    refuseNoFile(option, path, resolve(cwd, path));
    const other = taken.get(keyOf(path));
    if (other !== undefined)
      throw new BlankcheckError(
        'bad-option',
        `"${path}" of ${option} is also the name of ${other} of this run.\nGive ${option} another name.`,
      );
    take(path, `what ${option} writes`);
  }
}

function refuseNoFile(option: string, path: string, resolved: string): void {
  if (path === '-')
    throw new BlankcheckError(
      'bad-option',
      `${option} writes a file, and "-" names none.\nName one, or use --json for other programs; ./- is a file of that name.`,
    );
  if (isFolder(resolved))
    throw new BlankcheckError(
      'bad-option',
      `"${path}" of ${option} is a folder, and ${option} writes a file.\nName a file in it.`,
    );
}

/** What cannot be looked at is told of when it is written. */
function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}
