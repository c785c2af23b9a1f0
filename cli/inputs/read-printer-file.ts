import { resolve } from 'node:path';
import { BlankcheckError, type Printer, readPrinter } from '../../src/index.ts';
import { notThere } from './not-there.ts';
import { whyUnusable } from './read-bounded.ts';
import { isNamedFileThere, readNamedFile } from './read-named-file.ts';

/** A record has some hundred characters; a file far larger is something else (own choice). */
const MAX_PRINTER_BYTES = 1_000_000;

/** The text of a printer's file as it stands there. @throws BlankcheckError `no-such-file`, `bad-printer-record`. */
export async function readPrinterText(word: string, cwd: string, signal: AbortSignal): Promise<string> {
  let bytes: Uint8Array;
  const path = resolve(cwd, word);
  if (!(await isNamedFileThere(path))) throw notThere(`printer file "${word}"`);
  try {
    bytes = await readNamedFile(path, signal, MAX_PRINTER_BYTES);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw new BlankcheckError(
      cause.code === 'too-many-bytes' ? 'bad-printer-record' : 'no-such-file',
      `The printer file "${word}" cannot be used: ${whyUnusable(cause)}.\nMend that, or name the file of one record as JSON.`,
      { cause },
    );
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    throw new BlankcheckError(
      'bad-printer-record',
      `The printer file "${word}" is no text in UTF-8.\nExpected one record as JSON, with or without comments.`,
      { cause },
    );
  }
}

/** The printer of a file. @throws BlankcheckError `no-such-file`, `bad-printer-record`. */
export async function readPrinterFile(word: string, cwd: string, signal: AbortSignal): Promise<Printer> {
  return readPrinter(await readPrinterText(word, cwd, signal), word);
}
