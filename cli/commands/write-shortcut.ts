import { unlink } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { BlankcheckError, findBlank, looksLikeSize, showHidden } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError } from '../errors.ts';
import { findBlankByWord } from '../inputs/find-blank-by-word.ts';
import type { Io } from '../io.ts';
import { createInputGuard } from '../output/input-guard.ts';
import { isTaken } from '../output/is-taken.ts';
import { begins, publishDocument } from '../output/publish-document.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { whyNotWritten } from '../output/write-failure.ts';
import { findPackageFolder } from '../package-folder.ts';
import { type Dropped, makeShortcut, type ShortcutFile, systemOf } from '../shortcut/shortcut.ts';

/**
 * `shortcut`: something to drop art on, for one blank or to be asked, in the folder of `--to`; with `--remove` takes it away. The paths of
 * what was written or removed go to standard output. Returns 1 where a file could not be. @throws BlankcheckError of kind `usage`.
 */
export async function writeShortcut(
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  const [word] = words;
  if (word !== undefined)
    throw new BlankcheckError(
      'bad-option',
      `Expected no word, received "${word}".\nName the folder with --to, the blank with --blank.`,
    );
  if (options.to === undefined)
    throw new BlankcheckError('bad-option', 'Expected --to <folder>, such as --to ~/Desktop.');
  const to = inHome(options.to, io.env);
  const { files, next } = makeShortcut(
    options.for ?? systemOf(process.platform),
    await readDropped(options, io),
  );
  const placed = files.map((file) => ({ ...file, told: join(to, file.name) }));
  const errors = options.remove ? await removeOwn(placed, io) : await publish(placed, options, io, temps);
  for (const error of errors) printError(io.stderr, error);
  if (errors.length > 0) return 1;
  if (!options.remove) io.stderr.write(`${showHidden(next)}\n${tellElsewhere(options)}`);
  return 0;
}

/** `~/Desktop`, as README and messages have it: shells of Windows, and quotes, hand it on as it is. */
function inHome(folder: string, { HOME, USERPROFILE }: Io['env']): string {
  const home = HOME || USERPROFILE;
  return home && /^~(?:$|[\\/])/.test(folder) ? join(home, folder.slice(1)) : folder;
}

/** A shortcut names Node and the program by where they lie. */
function tellElsewhere({ for: system }: TypedOptions): string {
  const own = systemOf(process.platform);
  return system === undefined || system === own
    ? ''
    : `It names Node and blankcheck as they lie on this machine (${own}), and will not find them on another: make it on the machine where it is to be used.\n`;
}

async function readDropped({ blank: word, ask }: TypedOptions, { cwd, program }: Io): Promise<Dropped> {
  if ((word === undefined) === (ask === undefined))
    throw new BlankcheckError(
      word === undefined ? 'missing-blank' : 'bad-option',
      `Expected the blank that pictures are dropped for, or --ask to be asked each time, received ${word === undefined ? 'neither' : 'both'}.\nSuch as --blank tile-ceramic-8in.`,
    );
  const blank =
    word === undefined ? null : { id: (await findBlankByWord(word, cwd)).id, word: nameAnywhere(word, cwd) };
  return {
    name: `Blankcheck ${blank ? blank.id : 'ask'}`,
    node: process.execPath,
    program: program ?? join(findPackageFolder(), 'dist', 'cli', 'bin.js'),
    words: ['prepare', '--pause', '--force', ...(blank ? ['--blank', blank.word] : ['--ask'])],
  };
}

/** The blank's word as it means the same in every folder, and holds no quote, which batch files cannot. */
function nameAnywhere(word: string, cwd: string): string {
  const known = findBlank(word.toLowerCase());
  if (known) return known.id;
  return looksLikeSize(word) ? word.replaceAll('"', 'in') : resolve(cwd, word);
}

interface PlacedFile extends ShortcutFile {
  /** Where it goes, as messages call it. */
  readonly told: string;
}

async function publish(
  files: readonly PlacedFile[],
  { blank, force }: TypedOptions,
  { cwd, stdout }: Io,
  temps: TempFiles,
): Promise<readonly BlankcheckError[]> {
  const guard = createInputGuard(blank === undefined ? [] : [{ kind: 'file', file: resolve(cwd, blank) }]);
  const errors: BlankcheckError[] = [];
  for (const { told, ...file } of files) {
    const error = await publishDocument(
      { ...file, path: told, option: '--to' },
      { cwd, force: force === true, temps, guard },
    );
    if (error) errors.push(error);
    else stdout.write(`${showHidden(told)}\n`);
  }
  return errors;
}

/** Takes away what this command made, and nothing else. @throws BlankcheckError `no-such-file` where nothing of it is there */
async function removeOwn(
  files: readonly PlacedFile[],
  { cwd, stdout }: Io,
): Promise<readonly BlankcheckError[]> {
  const errors: BlankcheckError[] = [];
  let found = 0;
  for (const { told, head } of files) {
    const path = resolve(cwd, told);
    if (!(await isTaken(path))) continue;
    found += 1;
    try {
      if (!(await begins(path, head))) throw new Error('it is no shortcut of blankcheck');
      await unlink(path);
      stdout.write(`${showHidden(told)}\n`);
    } catch (cause) {
      const message = `"${told}" was left as it is: ${whyNotWritten(cause)}.`;
      errors.push(new BlankcheckError('cannot-write', message, { cause }));
    }
  }
  if (found > 0) return errors;
  const names = files.map(({ told }) => `"${told}"`).join(' or ');
  throw new BlankcheckError('no-such-file', `There is no ${names} to remove.`);
}
