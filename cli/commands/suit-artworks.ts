import {
  BlankcheckError,
  listBlanks,
  readArtwork,
  renderSuits,
  type SuitedArtwork,
  searchBlanks,
  suitArtwork,
  toSuitsJson,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Io } from '../io.ts';
import { lookAtFiles } from './look-at-files.ts';

/** `suits`: for which blanks of the catalogue each artwork is fit. @throws as lookAtFiles, `unknown-blank` */
export async function suitArtworks(words: readonly string[], options: TypedOptions, io: Io): Promise<number> {
  const among = chooseBlanks(options);
  return lookAtFiles<SuitedArtwork>(words, options, io, {
    expects: 'artwork',
    among: 'artworks',
    look: async (path, bytes, how) => {
      const artwork = await readArtwork(bytes, how);
      const { blanks, leftOut } = suitArtwork(artwork, among);
      const { sha256, format } = artwork;
      return {
        path,
        sha256,
        format,
        error: null,
        blanks: blanks.filter((suit) => isWanted(suit, options)),
        leftOut,
      };
    },
    unreadable: (path, { code, message }) => ({
      path,
      sha256: null,
      format: null,
      error: { code, message },
      blanks: [],
      leftOut: [],
    }),
    isWrong: ({ error }) => error !== null,
    toJson: toSuitsJson,
    render: renderSuits,
  });
}

function chooseBlanks({ among }: TypedOptions): ReturnType<typeof listBlanks> {
  if (among === undefined) return listBlanks();
  const blanks = searchBlanks(among.split(/\s+/));
  if (blanks.length > 0) return blanks;
  throw new BlankcheckError(
    'unknown-blank',
    `No blank fits "${among}" after --among.\nSee blankcheck blanks for all of them.`,
  );
}

function isWanted(
  { verdict, fullBleed }: { readonly verdict: string; readonly fullBleed: boolean },
  options: TypedOptions,
): boolean {
  if (options.fullBleed && !fullBleed) return false;
  if (options.atLeast === 'good') return verdict === 'good';
  return options.atLeast === undefined || verdict !== 'below';
}
