import { basename, dirname, resolve } from 'node:path';
import type { BlankcheckError } from '../../src/index.ts';
import type { Origin, PlannedArtwork } from './planned-artwork.ts';

/** The plan of a plain file; `path` as it is told, `file` where it is on this machine. */
export function planFile(path: string, file: string): PlannedArtwork {
  return planAs(path, file, { kind: 'file', file });
}

/** The plan of a file or folder that cannot be read. */
export function planFault(path: string, file: string, error: BlankcheckError): PlannedArtwork {
  return planAs(path, file, originOf(error));
}

/** The origin of what cannot be read. */
export function originOf({ code, message }: BlankcheckError): Origin {
  return { kind: 'fault', error: { code, message } };
}

function planAs(path: string, file: string, origin: Origin): PlannedArtwork {
  return {
    path,
    origin,
    folder: dirname(path),
    ...splitName(basename(file)),
    parent: basename(dirname(resolve(file))),
  };
}

/** A file name in two: `pear.v2` and `png` of `pear.v2.png`. Without a dot, or with only a leading one, there is no extension. */
export function splitName(name: string): { readonly stem: string; readonly extension: string } {
  const dot = name.lastIndexOf('.');
  return dot > 0
    ? { stem: name.slice(0, dot), extension: name.slice(dot + 1) }
    : { stem: name, extension: '' };
}
