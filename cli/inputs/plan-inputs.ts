import type { Stats } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { BlankcheckError, hasArtworkName, looksLikeZip, sniffFormat } from '../../src/index.ts';
import { expandArchive } from './expand-archive.ts';
import { expandFolder, judgeFile } from './expand-folder.ts';
import { expandGlob } from './expand-glob.ts';
import { looksLikeGlob } from './match-name.ts';
import { planFault, planFile } from './plan-file.ts';
import type { Expanded, Origin, PlannedArtwork } from './planned-artwork.ts';
import { cannotRead, readHead } from './read-bounded.ts';

/** What one word of the command line stands for. */
export interface PlannedArgument {
  readonly word: string;
  readonly kind: 'artwork' | 'folder' | 'archive' | 'pattern';
  /** Without those that an earlier word stands for already. */
  readonly artworks: readonly PlannedArtwork[];
  /** As these: what an earlier word passed over is not counted again. */
  readonly passedOver: number;
  readonly repeats: number;
  /** Only a part of it is asked for: that may be nothing. */
  readonly isPart?: true;
}

export interface InputPlan {
  readonly planned: readonly PlannedArgument[];
  /** Words that name nothing; the others are done all the same. */
  readonly missing: readonly BlankcheckError[];
}

export interface InputOptions {
  readonly cwd: string;
  readonly recursive: boolean;
  readonly signal: AbortSignal;
  /** Told how many files have been looked at so far. */
  readonly looked?: (files: number) => void;
}

/**
 * Finds the artworks that the words of the command line stand for: files, folders, ZIP archives, `-` for standard
 * input. Reads folders, directories of archives and first bytes, and keeps none of them.
 */
export async function planInputs(words: readonly string[], options: InputOptions): Promise<InputPlan> {
  const planned: PlannedArgument[] = [];
  const missing: BlankcheckError[] = [];
  const seen = new Set<string>();
  for (const word of words) {
    try {
      planned.push(await withoutRepeats(await planWord(word, options), options.cwd, seen));
    } catch (error) {
      if (!(error instanceof BlankcheckError)) throw error;
      missing.push(error);
    }
  }
  return { planned, missing };
}

/** With all that it stands for, also what an earlier one does. */
type PlannedWord = Pick<PlannedArgument, 'word' | 'kind'> & Expanded;

async function planWord(word: string, options: InputOptions): Promise<PlannedWord> {
  const { cwd, recursive, signal, looked } = options;
  const asArtwork = (artwork: PlannedArtwork): PlannedWord => ({
    word,
    kind: 'artwork',
    artworks: [artwork],
    passedOver: [],
  });
  if (word === '-')
    return asArtwork({
      path: '-',
      origin: { kind: 'stdin' },
      folder: '.',
      stem: 'stdin',
      extension: '',
      parent: '',
    });
  const file = resolve(cwd, word);
  let stats: Stats;
  try {
    stats = await stat(file);
  } catch (error) {
    if (isMissing(error)) return planPattern(word, options);
    return asArtwork(planFault(word, file, cannotRead(error)));
  }
  if (stats.isDirectory())
    return {
      word,
      kind: 'folder',
      ...(await expandFolder(word, file, { recursive, signal, ...(looked && { looked }) })),
    };
  if (stats.isFile() && (await isArchive(file)))
    return { word, kind: 'archive', ...(await expandArchive(word, file, signal)) };
  return asArtwork(planFile(word, file));
}

/** Asked of words only that name nothing: what is there is never taken for a pattern. */
async function planPattern(word: string, options: InputOptions): Promise<PlannedWord> {
  const pattern = process.platform === 'win32' ? word.replaceAll('\\', '/') : word;
  const paths = looksLikeGlob(pattern) ? await expandGlob(pattern, options.cwd) : [];
  if (paths.length === 0) throw noSuchFile(word);
  const artworks: PlannedArtwork[] = [];
  const passedOver: Origin[] = [];
  for (const path of paths) {
    options.signal.throwIfAborted();
    const found = await planMatch(path, options);
    artworks.push(...found.artworks);
    passedOver.push(...found.passedOver);
    options.looked?.(artworks.length + passedOver.length);
  }
  return { word, kind: 'pattern', artworks, passedOver };
}

/** As in a folder: what is no artwork is passed over. */
async function planMatch(path: string, options: InputOptions): Promise<Expanded> {
  const file = resolve(options.cwd, path);
  const isFolder = await stat(file).then(
    (stats) => stats.isDirectory(),
    () => false,
  );
  return isFolder ? expandFolder(path, file, options) : judgeFile(path, file, options.signal);
}

/** By its name, unless it holds a picture; by its content, unless it has the name of one. */
async function isArchive(file: string): Promise<boolean> {
  const named = /\.zip$/i.test(basename(file));
  if (!named && hasArtworkName(file)) return false;
  const head = await readHead(file);
  return looksLikeZip(head) || (named && sniffFormat(head) === null);
}

async function withoutRepeats(
  { word, kind, ...found }: PlannedWord,
  cwd: string,
  seen: Set<string>,
): Promise<PlannedArgument> {
  const isFirst = async (origin: Origin, path: string) => {
    const key = await identityOf(origin, resolve(cwd, path));
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  };
  const artworks: PlannedArtwork[] = [];
  for (const artwork of found.artworks)
    if (await isFirst(artwork.origin, artwork.path)) artworks.push(artwork);
  let passedOver = 0;
  for (const origin of found.passedOver) if (await isFirst(origin, '')) passedOver += 1;
  return { word, kind, artworks, passedOver, repeats: found.artworks.length - artworks.length };
}

/** `told`: what cannot be read has no other place than the path it is told by. */
async function identityOf(origin: Origin, told: string): Promise<string> {
  if (origin.kind === 'stdin') return 'stdin';
  if (origin.kind === 'fault') return `fault\0${told}\0${origin.error.message}`;
  const file = origin.kind === 'file' ? origin.file : origin.archive;
  const real = await realpath(file).catch(() => file);
  return origin.kind === 'file' ? `file\0${real}` : `entry\0${real}\0${origin.entry}`;
}

function isMissing(error: unknown): boolean {
  return ['ENOENT', 'ENOTDIR', 'ENAMETOOLONG', 'EINVAL', 'ERR_INVALID_ARG_VALUE'].includes(
    (error as NodeJS.ErrnoException).code ?? '',
  );
}

function noSuchFile(word: string): BlankcheckError {
  return new BlankcheckError(
    'no-such-file',
    `No such file or folder: "${word}".\nCheck the spelling and the folder you are in.`,
  );
}
