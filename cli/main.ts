import { resolve } from 'node:path';
import { BlankcheckError, nearestIds, VERSION } from '../src/index.ts';
import { parseArguments, type Request, type TypedOptions } from './arguments.ts';
import { COMMANDS, type CommandName } from './command-table.ts';
import { printError, printFault } from './errors.ts';
import { exitCodeOf } from './exit-code.ts';
import { missingArtwork } from './inputs/missing-artwork.ts';
import { interruptionOf } from './interrupt.ts';
import type { Io } from './io.ts';
import { isTaken } from './output/is-taken.ts';
import type { TempFiles } from './output/temp-files.ts';
import { applySettings } from './settings/gather-settings.ts';
import { waitForReturn } from './wait-for-return.ts';

/** Runs the command line: words after the program's name in, exit code out. Never throws, never ends the process. */
export async function main(argv: readonly string[], io: Io, temps: TempFiles): Promise<number> {
  let pauses = false;
  let exitCode: number;
  try {
    const request = await parseArguments(argv);
    pauses = request.wants === 'run' && request.options.pause === true;
    exitCode = await answer(request, io, temps);
  } catch (error) {
    exitCode = tellFailure(error, io);
  }
  if (pauses) await waitForReturn(io);
  return exitCode;
}

async function answer(request: Request, io: Io, temps: TempFiles): Promise<number> {
  switch (request.wants) {
    case 'version':
      io.stdout.write(`${VERSION}\n`);
      return 0;
    case 'help': {
      const { renderHelp } = await import('./help.ts');
      io.stdout.write(await renderHelp(request.about, io.stdout.columns || 80));
      return 0;
    }
    case 'run':
      return run(request, io, temps);
  }
}

type RunRequest = Request & { readonly wants: 'run' };

const TAKES_SETTINGS: ReadonlySet<CommandName> = new Set(['prepare', 'check', 'sheet', 'suits']);

async function run(request: RunRequest, io: Io, temps: TempFiles): Promise<number> {
  const { command, options, typed } = request;
  if (!TAKES_SETTINGS.has(command)) return runCommand(request, options, io, temps);
  try {
    return await runCommand(request, await applySettings(command, options, typed, io), io, temps);
  } catch (error) {
    if (io.interrupt.aborted || !(error instanceof BlankcheckError) || error.kind !== 'usage') throw error;
    const { nameSettings } = await import('./settings/name-settings.ts');
    throw await nameSettings(error, command, typed, io);
  }
}

async function runCommand(
  request: RunRequest,
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  const { command, operands } = request;
  switch (command) {
    case 'blanks': {
      const { printBlanks } = await import('./commands/list-blanks.ts');
      return printBlanks(operands, options, io);
    }
    case 'config': {
      const { showSettings } = await import('./commands/show-settings.ts');
      return showSettings(options, io);
    }
    case 'limits': {
      const { printLimits } = await import('./commands/list-limits.ts');
      return printLimits(options, io);
    }
    case 'record': {
      const { recordPressing } = await import('./commands/record-pressing.ts');
      return recordPressing(operands, options, io);
    }
    case 'history': {
      const { showHistory } = await import('./commands/show-history.ts');
      return showHistory(operands, options, io);
    }
    case 'explain': {
      const { explainFindings } = await import('./commands/explain-finding.ts');
      return explainFindings(operands, options, io);
    }
    case 'completions': {
      const { printCompletions } = await import('./commands/print-completions.ts');
      return printCompletions(operands, io);
    }
    case 'shortcut': {
      const { writeShortcut } = await import('./commands/write-shortcut.ts');
      return writeShortcut(operands, options, io, temps);
    }
    case 'calibrate': {
      const { calibratePrinter } = await import('./commands/calibrate-printer.ts');
      return calibratePrinter(operands, options, io, temps);
    }
    case 'inspect': {
      const { inspectFiles } = await import('./commands/inspect-files.ts');
      return inspectFiles(operands, options, io);
    }
    case 'suits': {
      const { suitArtworks } = await import('./commands/suit-artworks.ts');
      return suitArtworks(operands, options, io);
    }
    case 'press': {
      const { printPressCard } = await import('./commands/print-press-card.ts');
      return printPressCard(operands, options, io, temps);
    }
    case 'sheet': {
      const { layOutSheets } = await import('./commands/lay-out-sheets.ts');
      return layOutSheets(operands, options, io, temps);
    }
    case 'prepare':
    case 'check': {
      if (!request.named) await refuseMistypedCommand(operands[0], io.cwd);
      const asked = options.ask ? await ask(operands, options, io) : options;
      if (asked.watch) {
        const { watchFolders } = await import('./commands/watch-folders.ts');
        return watchFolders(command, operands, asked, io, temps);
      }
      const { judgeArtworks } = await import('./commands/judge-artworks.ts');
      return judgeArtworks(command, operands, asked, io, temps);
    }
  }
}

async function ask(operands: readonly string[], options: TypedOptions, io: Io): Promise<TypedOptions> {
  if (operands.length === 0) throw missingArtwork();
  const { askForMissing } = await import('./ask/ask-for-missing.ts');
  const canAsk = io.stdin.isTTY && io.stderr.isTTY;
  return askForMissing(options, canAsk && io.asker ? await io.asker() : null);
}

/** `chekc art.png` must not be taken for `prepare chekc art.png`, which would write files. */
async function refuseMistypedCommand(word: string | undefined, cwd: string): Promise<void> {
  if (word === undefined || !/^[a-z]+$/i.test(word)) return;
  const [near] = nearestIds(word, [...COMMANDS.map(({ name }) => name), 'help'], 1);
  if (near === undefined) return;
  if (await isTaken(resolve(cwd, word))) return;
  throw new BlankcheckError(
    'unknown-command',
    `Unknown command "${word}".\nDid you mean ${near}? See blankcheck --help.`,
  );
}

function tellFailure(error: unknown, { stderr, interrupt }: Io): number {
  const end = {
    results: [],
    failOn: 'error',
    usageErrors: 0,
    faults: 0,
    interruptedBy: interruptionOf(interrupt),
  } as const;
  if (interrupt.aborted) {
    stderr.write('blankcheck: interrupted\n');
    return exitCodeOf(end);
  }
  if (error instanceof BlankcheckError && error.kind === 'usage') {
    printError(stderr, error);
    return exitCodeOf({ ...end, usageErrors: 1 });
  }
  printFault(stderr, error);
  return exitCodeOf({ ...end, faults: 1 });
}
