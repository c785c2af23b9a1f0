import { basename, dirname, resolve } from 'node:path';
import type { ArtworkReport } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { PlacedInput } from '../commands/judge-all.ts';
import type { JudgeOptions } from '../commands/judge-artwork.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { OutputPaths } from '../output/output-paths.ts';
import { hashOptions } from './hash-options.ts';
import { hashSource } from './hash-source.ts';
import { isLasting } from './is-lasting.ts';
import { lookBack, writtenAt } from './look-back.ts';
import { appendToRunRecord, compactRunRecord, type ReadRunRecordLine, readRunRecord } from './run-record.ts';

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
  const disk = folders.list().get(dirname(path));
  if (disk === undefined) return;
  const written = report.output ? await writtenAt(path) : null;
  await appendToRunRecord(dirname(path), disk, {
    file: basename(path),
    sourceSha256: source.sha256,
    optionsSha256,
    written,
    report,
  });
}
