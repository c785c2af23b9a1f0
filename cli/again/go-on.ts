import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, posix, resolve } from 'node:path';
import { type ArtworkReport, readPrintRecord } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { PlacedInput } from '../commands/judge-all.ts';
import type { JudgeOptions } from '../commands/judge-artwork.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { OutputPaths } from '../output/output-paths.ts';
import { hashOptions } from './hash-options.ts';
import { hashSource } from './hash-source.ts';
import {
  appendToRunRecord,
  compactRunRecord,
  type ReadRunRecordLine,
  type RunRecordLine,
  readRunRecord,
} from './run-record.ts';

/** What earlier runs leave to be done. */
export interface GoingOn {
  /** The inputs, with what may be replaced; all of them, also those that are done. */
  readonly inputs: readonly PlacedInput[];
  /** What became of artworks that are unchanged since. */
  readonly done: ReadonlyMap<PlannedArtwork, ArtworkReport>;
  /** Notes what became of an artwork now. */
  note(artwork: PlannedArtwork, report: ArtworkReport): Promise<void>;
  /** Compacts the records that were read. */
  end(): Promise<void>;
}

/** Of runs that write: what came out of a folder or an archive, with its record in the folder that the files go to. */
export async function goOn(
  inputs: readonly PlacedInput[],
  options: TypedOptions,
  judging: JudgeOptions,
  looked: (artworks: number) => void,
): Promise<GoingOn> {
  const { cwd, writes } = judging;
  if (!writes) return { inputs, done: new Map(), note: async () => undefined, end: async () => undefined };
  const optionsSha256 = await hashOptions(options, judging);
  const records = new Map<string, Promise<ReadonlyMap<string, ReadRunRecordLine>>>();
  const recordOf = (folder: string) => {
    const record = records.get(folder) ?? readRunRecord(folder);
    records.set(folder, record);
    return record;
  };
  const placed: PlacedInput[] = [];
  const done = new Map<PlannedArtwork, ArtworkReport>();
  const outputsOf = new Map(inputs.map((input) => [input.artwork, recordedOutputs(input)]));
  for (const input of inputs) {
    const outputs = outputsOf.get(input.artwork);
    const before =
      outputs &&
      (await lookBack(input, outputs, await recordOf(dirname(resolve(cwd, outputs.printReady))), {
        ...judging,
        optionsSha256,
      }));
    const next = before?.mayReplace ? { ...input, place: { ...input.place, mayReplace: true } } : input;
    placed.push(next);
    looked(placed.length);
    // A page shows pictures, which no record keeps.
    if (before?.report && options.fresh !== true && !judging.view) done.set(next.artwork, before.report);
  }
  return {
    inputs: placed,
    done,
    async end() {
      for (const folder of records.keys()) await compactRunRecord(folder, judging.temps);
    },
    async note(artwork, report) {
      const outputs = outputsOf.get(artwork);
      if (outputs && isLasting(report))
        await appendLine(resolve(cwd, outputs.printReady), artwork, report, { ...judging, optionsSha256 });
    },
  };
}

/** null for what was named itself: there, a file that is in the way is told, and never replaced unasked. */
function recordedOutputs({ artwork: { origin }, place }: PlacedInput): OutputPaths | null {
  return place.skipOwn && (origin.kind === 'file' || origin.kind === 'entry')
    ? (place.outputs ?? null)
    : null;
}

interface LookedBack {
  readonly mayReplace: boolean;
  /** null where it is to be judged anew. */
  readonly report: ArtworkReport | null;
}

async function lookBack(
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

async function appendLine(
  path: string,
  artwork: PlannedArtwork,
  report: ArtworkReport,
  { reader, folders, optionsSha256 }: JudgeOptions & { readonly optionsSha256: string },
): Promise<void> {
  const { sha256 } = report.artwork;
  const source = artwork.formats
    ? await hashSource(artwork, reader)
    : { sha256: sha256!, formats: [sha256!] };
  // It changed since it was judged: nothing is known of what is there now.
  if (!source?.formats.includes(sha256!)) return;
  const isThere = await folders.expect(dirname(path)).then(
    () => true,
    () => false,
  );
  if (!isThere) return;
  const written = report.output ? await writtenAt(path) : null;
  await appendToRunRecord(dirname(path), {
    file: basename(path),
    sourceSha256: source.sha256,
    optionsSha256,
    written,
    report,
  });
}

/** As it is given now, of the format that the report is of. */
function pathOfFormat(artwork: PlannedArtwork, report: ArtworkReport): string {
  const name = posix.basename(report.artwork.path);
  return (artwork.formats?.find(({ path }) => posix.basename(path) === name) ?? artwork).path;
}

/** Would it come out the same again? What could not be read or written may, next time; a fault of ours is not kept. */
function isLasting(report: ArtworkReport): boolean {
  const { artwork, status, error, proofError, outcomes } = report;
  return (
    artwork.sha256 !== null &&
    status !== 'unreadable' &&
    error === null &&
    proofError === null &&
    !(report.picture && 'error' in report.picture) &&
    outcomes.every((outcome) => outcome.status !== 'broken') &&
    survivesJson(report)
  );
}

/** Numbers without end, which JSON cannot hold, would be read back as something else. */
function survivesJson(report: ArtworkReport): boolean {
  let survives = true;
  JSON.stringify(report, (_, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) survives = false;
    return value;
  });
  return survives;
}

async function writtenAt(path: string): Promise<RunRecordLine['written']> {
  return stat(path).then(
    ({ size, mtimeMs }) => ({ bytes: size, mtimeMs }),
    () => null,
  );
}

function isSame(a: RunRecordLine['written'], b: RunRecordLine['written']): boolean {
  return a?.bytes === b?.bytes && a?.mtimeMs === b?.mtimeMs;
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
