import { DEFECTS, listBlanks } from '../../src/index.ts';
import { COMMANDS, type CommandRow } from '../command-table.ts';
import type { OptionRow } from '../options/option-row.ts';
import { optionsOf } from '../options.ts';
import { SHELLS } from './shells.ts';

/** What may stand in one place: words that are known, files, folders; nothing of it where only the user can know. */
export interface Completed {
  readonly words: readonly string[];
  readonly paths: 'files' | 'folders' | 'none';
}

export interface CompletedOption {
  /** With its dashes. */
  readonly name: string;
  readonly help: string;
  /** null where it takes no value. */
  readonly value: Completed | null;
}

export interface CompletedCommand {
  readonly name: string;
  readonly help: string;
  readonly operand: Completed;
  readonly options: readonly CompletedOption[];
}

const NOTHING: Completed = { words: [], paths: 'none' };
const FILES: Completed = { words: [], paths: 'files' };

/** The commands as a shell completes them, from the tables that also make --help and the parser. */
export function readCommandTree(): readonly CompletedCommand[] {
  return COMMANDS.map((row) => ({
    name: row.name,
    help: row.help,
    operand: operandOf(row),
    options: [
      ...optionsOf(row.name)
        .filter(({ hidden }) => !hidden)
        .map((option) => ({ name: nameOf(option), help: shorten(option.help), value: findValue(option) })),
      { name: '--help', help: 'help about this command', value: null },
    ],
  }));
}

/** Names of all options that take a value, each once: the word behind them is no command. */
export function listValueOptions(tree: readonly CompletedCommand[]): readonly string[] {
  const names = tree.flatMap(({ options }) => options.filter(({ value }) => value).map(({ name }) => name));
  return [...new Set(names)];
}

function operandOf({ takes }: CommandRow): Completed {
  if (takes === '<blank>') return { words: listIds(), paths: 'files' };
  if (takes === '<shell>') return { words: SHELLS, paths: 'none' };
  return takes.startsWith('<') ? FILES : NOTHING;
}

function findValue({ flags, choices }: OptionRow): Completed | null {
  const placeholder = flags.split(' ')[1];
  if (placeholder === undefined) return null;
  if (choices) return { words: choices, paths: 'none' };
  if (placeholder === '<file>') return FILES;
  if (placeholder === '<folder>') return { words: [], paths: 'folders' };
  if (placeholder === '<blank>') return { words: listIds(), paths: 'files' };
  return flags.startsWith('--defect ') ? { words: Object.keys(DEFECTS), paths: 'none' } : NOTHING;
}

function nameOf({ flags }: OptionRow): string {
  return flags.split(' ')[0]!;
}

function listIds(): readonly string[] {
  return listBlanks().map(({ id }) => id);
}

/** The first part of a sentence: shells show one line. */
function shorten(help: string): string {
  return help.split(/[:;(]/)[0]!.trim();
}
