import { readFile, stat } from 'node:fs/promises';
import { basename, posix, resolve } from 'node:path';
import { type ArtworkReport, readPrintRecord } from '../../src/index.ts';
import type { PlacedInput } from '../commands/judge-all.ts';
import type { JudgeOptions } from '../commands/judge-artwork.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { OutputPaths } from '../output/output-paths.ts';
import { hashSource } from './hash-source.ts';
import type { ReadRunRecordLine, RunRecordLine } from './run-record.ts';

interface LookedBack {
  readonly mayReplace: boolean;
  /** null where it is to be judged anew. */
  readonly report: ArtworkReport | null;
}

/** What an earlier run did with an artwork; null where it did nothing, or where the artwork cannot be read. */
export async function lookBack(
  { artwork }: PlacedInput,
  outputs: OutputPaths,
  record: ReadonlyMap<string, ReadRunRecordLine>,
  { reader, signal, cwd, optionsSha256 }: JudgeOptions & { readonly optionsSha256: string },
): Promise<LookedBack | null> {
  const path = resolve(cwd, outputs.printReady);
  const line = record.get(basename(path));
  const there = await writtenAt(path);
  if (line === undefined && there === null) return null;
  signal.throwIfAborted();
  const source = await hashSource(artwork, reader);
  if (source === null) return null;
  const asWritten = line !== undefined && isSame(line.written, there);
  const isUnchanged =
    asWritten &&
    line.isCurrent &&
    line.sourceSha256 === source.sha256 &&
    line.optionsSha256 === optionsSha256;
  return {
    // A killed run may have finished it and not noted it.
    mayReplace:
      there !== null &&
      ((asWritten && line.written !== null) || source.formats.includes((await sourceOf(path)) ?? '')),
    report:
      isUnchanged && (await hasOthers(line.report, outputs, cwd))
        ? asToldNow(line.report, pathOfFormat(artwork, line.report), outputs)
        : null,
  };
}

/** null where no file is. */
export async function writtenAt(path: string): Promise<RunRecordLine['written']> {
  return stat(path).then(
    ({ size, mtimeMs }) => ({ bytes: size, mtimeMs }),
    () => null,
  );
}

function isSame(a: RunRecordLine['written'], b: RunRecordLine['written']): boolean {
  return a?.bytes === b?.bytes && a?.mtimeMs === b?.mtimeMs;
}

/** As it is given now, of the format that the report is of. */
function pathOfFormat(artwork: PlannedArtwork, report: ArtworkReport): string {
  const name = posix.basename(report.artwork.path);
  return (artwork.formats?.find(({ path }) => posix.basename(path) === name) ?? artwork).path;
}

async function sourceOf(path: string): Promise<string | null> {
  const bytes = await readFile(path).catch(() => null);
  return (bytes && readPrintRecord(bytes)?.sourceSha256) ?? null;
}

/** Are the files that were made beside the print-ready one there still? */
async function hasOthers(
  { proof, picture }: ArtworkReport,
  outputs: OutputPaths,
  cwd: string,
): Promise<boolean> {
  const made = [...(proof ? [outputs.proof] : []), ...(picture ? [outputs.picture] : [])];
  const found = await Promise.all(made.map((path) => (path === null ? null : writtenAt(resolve(cwd, path)))));
  return !found.includes(null);
}

function asToldNow(report: ArtworkReport, path: string, outputs: OutputPaths): ArtworkReport {
  return {
    ...report,
    artwork: { ...report.artwork, path },
    output: report.output && { ...report.output, path: outputs.printReady },
    proof: report.proof && outputs.proof !== null ? { ...report.proof, path: outputs.proof } : report.proof,
    ...(report.picture &&
      'path' in report.picture &&
      outputs.picture !== null && { picture: { ...report.picture, path: outputs.picture } }),
  };
}
