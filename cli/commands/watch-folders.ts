import { stat } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { BlankcheckError, type Summary, showHidden, toSummaryJsonLine } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { exitCodeOf } from '../exit-code.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { createOutFolders } from '../output/out-folders.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { choosePoolSize } from '../pool/pool-size.ts';
import { type Clock, SYSTEM_CLOCK } from '../watch/clock.ts';
import { listStates } from '../watch/list-states.ts';
import { createRestingFiles, type FileState } from '../watch/resting-files.ts';
import { judgePart } from './judge-artworks.ts';
import { readJudging } from './read-judging.ts';

/** Between two looks at the folders. */
const LOOK_MS = 1000;
const NOTHING: Summary = { artworks: 0, ready: 0, look: 0, stop: 0, unreadable: 0, passedOver: 0 };

/**
 * `--watch`: judges what lies in the folders and what lands in them, each file once it rests and again when it changed;
 * what could not be decoded, too. Folders that go away are waited for. Ends with an interrupt only; returns its exit code.
 * @throws BlankcheckError of kind `usage`, before anything was judged.
 */
export async function watchFolders(
  command: 'prepare' | 'check',
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
  clock: Clock = SYSTEM_CLOCK,
): Promise<number> {
  refuseDocuments(options);
  const folders = await findFolders(words, io.cwd);
  // What does not hold is told now, not when the first file lands.
  await readJudging(command, options, io, temps, []);
  choosePoolSize(options);
  const say = (text: string) => {
    if (options.quiet !== true) io.stderr.write(`${showHidden(`blankcheck: ${text}`)}\n`);
  };
  say(`watching ${words.map((word) => `"${word}"`).join(', ')}; Ctrl-C ends it`);
  const resting = createRestingFiles();
  const gone = new Set<string>();
  const closed = new Set<string>();
  const outFolders = createOutFolders();
  let summary = NOTHING;
  while (!io.interrupt.aborted) {
    const states = new Map<string, FileState>();
    for (const [word, folder] of folders) {
      const found = await listStates(folder, options.recursive === true, (below) => {
        if (!closed.has(below))
          say(`"${join(word, relative(folder, below))}" cannot be read: what lands there goes unseen`);
        closed.add(below);
      });
      if (found === null && !gone.has(word)) say(`"${word}" is not there or cannot be read; waiting for it`);
      if (found !== null && gone.has(word)) say(`"${word}" is back`);
      if (found === null) gone.add(word);
      else gone.delete(word);
      for (const [path, state] of found ?? []) states.set(path, state);
    }
    const rested = new Set(resting.look(states, clock.nowMs()));
    if (rested.size > 0) {
      const there = words.filter((word) => !gone.has(word));
      const judged = await judgePart(command, there, options, io, temps, rested, outFolders).catch(
        (error: unknown) => {
          if (io.interrupt.aborted) return null;
          throw error;
        },
      );
      if (judged === null) break;
      summary = add(summary, judged);
    }
    await clock.sleep(LOOK_MS, io.interrupt);
  }
  say(`interrupted; artworks judged: ${summary.artworks}`);
  if (options.jsonLines) io.stdout.write(toSummaryJsonLine(summary));
  return exitCodeOf({
    results: [],
    failOn: 'error',
    usageErrors: 0,
    faults: 0,
    interruptedBy: interruptionOf(io.interrupt),
  });
}

/** By their words, where they are on this machine. */
async function findFolders(words: readonly string[], cwd: string): Promise<ReadonlyMap<string, string>> {
  if (words.length === 0)
    throw new BlankcheckError('missing-artwork', 'No folder was given.\nName those to watch.');
  const folders = new Map<string, string>();
  for (const word of words) {
    const folder = resolve(cwd, word);
    const stats = await stat(folder).catch(() => null);
    if (!stats?.isDirectory())
      throw new BlankcheckError(
        'no-such-file',
        stats
          ? `Expected folders with --watch, and "${word}" is a file.\nName the folder that it lies in, or leave --watch out.`
          : `Expected folders that are there with --watch, received "${word}".\nMake the folder first, or leave --watch out.`,
      );
    folders.set(word, folder);
  }
  return folders;
}

/** They are of a whole run, and a watch has no end but an interrupt. */
function refuseDocuments({ json, csv, report }: TypedOptions): void {
  const asked = json ? '--json' : csv !== undefined ? '--csv' : report !== undefined ? '--report' : null;
  if (asked === null) return;
  throw new BlankcheckError(
    'bad-option',
    `${asked} is of a whole run, and --watch goes on.\nTake --json-lines, which tells each result as it comes.`,
  );
}

function add(a: Summary, b: Summary): Summary {
  return {
    artworks: a.artworks + b.artworks,
    ready: a.ready + b.ready,
    look: a.look + b.look,
    stop: a.stop + b.stop,
    unreadable: a.unreadable + b.unreadable,
    passedOver: a.passedOver + b.passedOver,
  };
}
