import {
  type BlankcheckError,
  type InspectedFile,
  inspectPrintReady,
  renderInspection,
  toInspectionsJson,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Io } from '../io.ts';
import { lookAtFiles } from './look-at-files.ts';

/**
 * `inspect`: what each print-ready file is and whether it was changed. In folders and archives only files with a record
 * count. Returns 0 when all are unchanged, 1 when one is not. @throws as lookAtFiles
 */
export function inspectFiles(words: readonly string[], options: TypedOptions, io: Io): Promise<number> {
  return lookAtFiles<InspectedFile>(words, options, io, {
    expects: 'print-ready file',
    among: 'print-ready',
    look: async (path, bytes, how) => ({ path, ...(await inspectPrintReady(bytes, how)) }),
    unreadable: withoutBytes,
    isWrong: ({ verdict }) => verdict !== 'unchanged',
    toJson: toInspectionsJson,
    render: renderInspection,
  });
}

function withoutBytes(path: string, { code, message }: BlankcheckError): InspectedFile {
  const nothing = {
    sha256: null,
    format: null,
    widthPx: null,
    heightPx: null,
    statedPpi: null,
    trueSizeMm: null,
  };
  return { path, verdict: 'unreadable', ...nothing, record: null, changes: [], error: { code, message } };
}
