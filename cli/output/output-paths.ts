import { join } from 'node:path';
import type { PrintReadyFormat } from '../../src/index.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import { nameOutputs } from './name-outputs.ts';

const DEFAULT_FOLDER = 'print-ready';
const EXTENSIONS = { png: 'png', tiff: 'tif', pdf: 'pdf' } as const satisfies Record<
  PrintReadyFormat,
  string
>;

export interface OutputOptions {
  readonly blankId: string;
  readonly format: PrintReadyFormat;
  /** Outlines only, which must not be taken for the print. */
  readonly dummy?: boolean | undefined;
  /** One folder for all; left out, `print-ready` beside each artwork. */
  readonly out?: string | undefined;
  /** One folder for all proofs; left out, there are none. */
  readonly proof?: string | undefined;
  /** The same of annotated pictures. */
  readonly picture?: string | undefined;
}

/** Where the files of one artwork go, as relative or absolute as the artwork, or the folder, was given. */
export interface OutputPaths {
  readonly printReady: string;
  readonly proof: string | null;
  readonly picture: string | null;
}

/** Where the files of each artwork of a run go. */
export function planOutputPaths(
  artworks: readonly PlannedArtwork[],
  { blankId, format, dummy, out, proof, picture }: OutputOptions,
): ReadonlyMap<PlannedArtwork, OutputPaths> {
  const readable = artworks.filter(({ origin }) => origin.kind !== 'fault');
  const printReady = pathsIn(
    readable,
    ({ folder }) => out ?? join(folder, DEFAULT_FOLDER),
    blankId,
    `${dummy === true ? 'dummy.' : ''}${EXTENSIONS[format]}`,
  );
  const proofs = proof === undefined ? [] : pathsIn(readable, () => proof, blankId, 'proof.png');
  const pictures = picture === undefined ? [] : pathsIn(readable, () => picture, blankId, 'picture.png');
  return new Map(
    readable.map((artwork, index) => [
      artwork,
      {
        printReady: printReady[index]!,
        proof: proofs[index] ?? null,
        picture: pictures[index] ?? null,
      },
    ]),
  );
}

function pathsIn(
  artworks: readonly PlannedArtwork[],
  folderOf: (artwork: PlannedArtwork) => string,
  blankId: string,
  ending: string,
): readonly string[] {
  const folders = artworks.map(folderOf);
  const named = artworks.map(({ stem, extension, parent, path }, index) => ({
    folder: folders[index]!,
    stem,
    extension,
    parent,
    path,
  }));
  return nameOutputs(named, blankId, ending).map((name, index) => join(folders[index]!, name));
}
