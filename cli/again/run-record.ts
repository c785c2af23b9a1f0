import { open, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type ArtworkReport, SEEDS_SHA256, VERSION } from '../../src/index.ts';
import { publishFile } from '../output/publish-file.ts';
import { RUN_RECORD_NAME } from '../output/run-record-name.ts';
import type { TempFiles } from '../output/temp-files.ts';

// A line for each artwork, of two for one file the later.
const SCHEMA_VERSION = 1;

/** What was made of one artwork, and of what. */
export interface RunRecordLine {
  /** Name of its print-ready file in the folder, be it written or not. */
  readonly file: string;
  readonly sourceSha256: string;
  readonly optionsSha256: string;
  /** The file as it was written; null where none was. */
  readonly written: { readonly bytes: number; readonly mtimeMs: number } | null;
  readonly report: ArtworkReport;
}

/** A line as it is read: one of another version of the program, or of other seeds, says whose a file is, and nothing more. */
export interface ReadRunRecordLine extends RunRecordLine {
  readonly isCurrent: boolean;
}

const MADE_BY = { schemaVersion: SCHEMA_VERSION, program: VERSION, seedsSha256: SEEDS_SHA256 } as const;

/**
 * The lines by file. A line that is torn, as after a kill or a full disk, or that anybody else wrote, is no line; no record
 * is an empty one.
 */
export async function readRunRecord(folder: string): Promise<ReadonlyMap<string, ReadRunRecordLine>> {
  const text = await readFile(join(folder, RUN_RECORD_NAME), 'utf8').catch(() => '');
  return new Map(
    text.split('\n').flatMap((line) => {
      const parsed = parseLine(line);
      return parsed ? [[parsed.file, parsed] as const] : [];
    }),
  );
}

/**
 * The record without what later lines supersede and what is no line, where that is more than half of it; null where it
 * is to be left as it is. The lines are the same bytes, in their order.
 */
export function compactRecord(text: string): string | null {
  const lines = text.split('\n').filter((line) => line !== '');
  const last = new Map<string, number>();
  for (const [index, line] of lines.entries()) {
    const parsed = parseLine(line);
    if (parsed) last.set(parsed.file, index);
  }
  const kept = lines.filter((_, index) => last.get(parseLine(lines[index]!)?.file ?? '') === index);
  return kept.length * 2 < lines.length ? kept.map((line) => `${line}\n`).join('') : null;
}

/** Compacts the record in the folder, all of it or not at all; where that cannot be, the record only stays longer. */
export async function compactRunRecord(folder: string, temps: TempFiles): Promise<void> {
  const path = join(folder, RUN_RECORD_NAME);
  const compact = compactRecord(await readFile(path, 'utf8').catch(() => ''));
  if (compact === null) return;
  const bytes = Buffer.from(compact);
  await publishFile({ path, told: RUN_RECORD_NAME }, bytes, { replace: true, temps }).catch(() => undefined);
}

/**
 * Adds a line to the record on this disk; where it cannot be written, the artwork is judged anew next time, and that is all.
 * A drive may be pulled at any moment: what is opened beneath its mount point then is taken away again.
 */
export async function appendToRunRecord(folder: string, disk: number, line: RunRecordLine): Promise<void> {
  // Behind a line break of its own: the line before may be torn.
  const text = `\n${JSON.stringify({ ...MADE_BY, ...line })}\n`;
  const path = join(folder, RUN_RECORD_NAME);
  const file = await open(path, 'a').catch(() => null);
  if (file === null) return;
  try {
    const { dev, size } = await file.stat();
    if (dev === disk) await file.appendFile(text);
    else if (size === 0) await rm(path, { force: true });
  } catch {
    // As if it could not be opened.
  } finally {
    await file.close().catch(() => undefined);
  }
}

function parseLine(line: string): ReadRunRecordLine | null {
  try {
    const { schemaVersion, program, seedsSha256, ...rest } = JSON.parse(line) as RunRecordLine &
      typeof MADE_BY;
    if (schemaVersion !== SCHEMA_VERSION || !isWhole(rest)) return null;
    return { ...rest, isCurrent: program === VERSION && seedsSha256 === SEEDS_SHA256 };
  } catch {
    return null;
  }
}

function isWhole({ file, sourceSha256, optionsSha256, written, report }: RunRecordLine): boolean {
  return (
    [file, sourceSha256, optionsSha256].every((text) => typeof text === 'string') &&
    (written === null || (typeof written.bytes === 'number' && typeof written.mtimeMs === 'number')) &&
    Array.isArray(report.outcomes)
  );
}
