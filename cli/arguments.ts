import type { Command } from 'commander';
import { BlankcheckError, type Pressure } from '../src/index.ts';
import { COMMANDS, type CommandName, type CommandRow } from './command-table.ts';
import { OPTIONS, optionsOf } from './options.ts';
import type { System } from './shortcut/systems.ts';

/** Options as they were typed; flags are true or left out. */
export interface TypedOptions {
  readonly blank?: string;
  readonly ask?: true;
  readonly measured?: string;
  readonly wrap?: string;
  readonly hand?: 'left' | 'right';
  readonly development?: 'auto' | 'rectangle';
  readonly width?: string;
  readonly height?: string;
  readonly fit?: 'inside' | 'cover';
  readonly turn?: '0' | '90' | '180' | '270';
  readonly offset?: string;
  readonly bleed?: string;
  readonly safe?: string;
  readonly surface?: 'first' | 'second';
  readonly ppi?: string;
  readonly background?: string;
  readonly mend?: string;
  readonly omitMarks?: string;
  readonly dummy?: boolean;
  readonly extend?: 'edge' | 'reflect' | 'blur';
  readonly printer?: string;
  readonly ruler?: string;
  readonly rulerLength?: string;
  readonly condition?: string;
  readonly printerProfile?: string;
  readonly intent?: 'perceptual' | 'relative' | 'saturation' | 'absolute';
  /** False with --no-black-point-compensation. */
  readonly blackPointCompensation?: boolean;
  readonly format?: 'png' | 'tiff' | 'pdf';
  readonly sheet?: string;
  readonly job?: string;
  readonly copies?: string;
  readonly pair?: true;
  readonly mayTurn?: true;
  readonly gutter?: string;
  readonly platen?: string;
  readonly out?: string;
  readonly proof?: string;
  readonly proofMark?: true;
  readonly report?: string;
  readonly picture?: string;
  readonly page?: string;
  readonly cost?: true;
  readonly costOf?: readonly string[];
  readonly for?: System;
  readonly to?: string;
  readonly remove?: true;
  readonly force?: true;
  readonly anyway?: true;
  readonly dryRun?: true;
  readonly watch?: true;
  readonly among?: string;
  readonly atLeast?: 'acceptable' | 'good';
  readonly fullBleed?: true;
  readonly result?: '1' | '2' | '3' | '4' | '5';
  readonly defect?: string;
  readonly temperature?: string;
  readonly platenTemperature?: string;
  readonly time?: string;
  readonly pressure?: Pressure;
  readonly art?: string;
  readonly lot?: string;
  readonly paper?: string;
  readonly photo?: string;
  readonly note?: string;
  readonly date?: string;
  readonly ledger?: string;
  /** A file of `prepare` and `check`; a flag of `history`. */
  readonly csv?: true | string;
  readonly recursive?: true;
  readonly limit?: readonly string[];
  readonly fresh?: true;
  readonly jobs?: string;
  readonly memory?: string;
  readonly json?: true;
  readonly jsonLines?: true;
  readonly failOn?: 'error' | 'warning' | 'advice' | 'never';
  readonly quiet?: true;
  readonly pause?: true;
  /** False with --no-colour or --no-color. */
  readonly colour?: boolean;
  readonly color?: boolean;
}

/** What is asked for: help about all (null) or one command, the version, or a run. */
export type Request =
  | { readonly wants: 'help'; readonly about: CommandName | null }
  | { readonly wants: 'version' }
  | {
      readonly wants: 'run';
      readonly command: CommandName;
      /** False where the command was left out and `prepare` is meant. */
      readonly named: boolean;
      readonly operands: readonly string[];
      readonly options: TypedOptions;
      /** Names of the options that were typed, and are not there by default. */
      readonly typed: ReadonlySet<string>;
    };

/**
 * Reads the words after the program's name. The command is the first word that belongs to no option; where that is
 * none, `prepare` is meant.
 * @throws BlankcheckError `bad-option` for an unknown option, a missing value or one that is no choice.
 */
export async function parseArguments(argv: readonly string[]): Promise<Request> {
  const at = findOperand(argv);
  const first = at === null ? undefined : argv[at];
  const row = COMMANDS.find(({ name }) => name === first);
  if (first === 'help' && at !== null)
    return { wants: 'help', about: COMMANDS.find(({ name }) => name === argv[at + 1])?.name ?? null };
  const rest = row ? argv.filter((_, index) => index !== at) : argv;
  const command = await parserFor(row ?? COMMANDS[0]!, rest);
  const { help, version, ...options } = command.opts<TypedOptions & { help?: true; version?: true }>();
  if (help) return { wants: 'help', about: row?.name ?? null };
  if (version) return { wants: 'version' };
  refuseEmpty(command.args, options);
  return {
    wants: 'run',
    command: row?.name ?? 'prepare',
    named: row !== undefined,
    operands: command.args,
    options,
    typed: new Set(Object.keys(options).filter((name) => command.getOptionValueSource(name) === 'cli')),
  };
}

/** An empty word is a variable of a script that was never set, and would stand for the whole folder one is in. */
function refuseEmpty(operands: readonly string[], options: TypedOptions): void {
  const empty = Object.entries(options).find(([, value]) => value === '');
  if (empty) throw new BlankcheckError('bad-option', `Expected a value for --${empty[0]}, received nothing.`);
  if (operands.includes(''))
    throw new BlankcheckError('bad-option', 'Expected a name, received an empty word.');
}

/** Where the first word stands that is neither an option nor the value of one; null where there is none before `--`. */
function findOperand(argv: readonly string[]): number | null {
  for (let index = 0; index < argv.length; index += 1) {
    const word = argv[index]!;
    if (word === '--') return null;
    if (word === '-' || !word.startsWith('-')) return index;
    if (TAKES_VALUE.has(word)) index += 1;
  }
  return null;
}

const TAKES_VALUE: ReadonlySet<string> = new Set(
  OPTIONS.filter(({ flags }) => flags.includes('<')).map(({ flags }) => flags.split(' ')[0]!),
);

async function parserFor(row: CommandRow, argv: readonly string[]): Promise<Command> {
  const { Command, CommanderError, Option } = await import('commander');
  const command = new Command(row.name)
    .argument('[operands...]')
    .helpOption(false)
    .option('-h, --help')
    .option('-V, --version')
    .exitOverride()
    .configureOutput({ writeErr: () => undefined, writeOut: () => undefined });
  for (const { flags, choices, byDefault, repeats } of optionsOf(row.name)) {
    const option = new Option(flags);
    if (choices) option.choices(choices);
    if (repeats) option.argParser((word: string, before: readonly string[] = []) => [...before, word]);
    if (byDefault !== undefined) option.default(byDefault);
    command.addOption(option);
  }
  try {
    return command.parse([...argv], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    throw new BlankcheckError('bad-option', inOurWords(error.message));
  }
}

/** `error: unknown option '--blnk'\n(Did you mean --blank?)` as what is wrong and, on the next line, how to mend it. */
function inOurWords(message: string): string {
  const [what = '', hint] = message.replace(/^error: /, '').split('\n');
  const remedy = hint ? hint.replace(/^\(|\)$/g, '') : 'See blankcheck --help for the options.';
  return `${what.charAt(0).toUpperCase()}${what.slice(1).replace(/\.$/, '')}.\n${remedy}`;
}
