import type { OptionRow } from '../options/option-row.ts';
import { OPTIONS } from '../options.ts';

/** An option that may be set once for many runs, under its long name in camelCase. */
export interface Setting {
  readonly name: string;
  readonly kind: 'flag' | 'text' | 'texts';
  readonly choices?: readonly string[];
  readonly help: string;
  readonly of: OptionRow['of'];
  readonly byDefault?: string;
  /** Does the value name a file or folder, which is relative to where it was set? */
  readonly isPath: (value: string) => boolean;
}

/** What is decided for one run, and would do harm or make no sense in every one. */
export const OF_ONE_RUN: ReadonlySet<string> = new Set([
  'anyway',
  'art',
  'ask',
  'at',
  'copies',
  'csv',
  'dryRun',
  'force',
  'fresh',
  'job',
  'json',
  'jsonLines',
  'pause',
  'ruler',
  'rulerLength',
  'watch',
]);
const PATHS: ReadonlySet<string> = new Set([
  'out',
  'proof',
  'picture',
  'report',
  'printer',
  'printerProfile',
]);
/** An id, or a file. */
const MAYBE_PATHS: ReadonlySet<string> = new Set(['blank', 'condition']);
const COMMANDS = ['prepare', 'check', 'sheet', 'suits'] as const;

export const SETTINGS: readonly Setting[] = OPTIONS.filter(
  (row) => row.hidden !== true && COMMANDS.some((command) => row.of.includes(command)),
)
  .map(settingOf)
  .filter(({ name }) => !OF_ONE_RUN.has(name));

function settingOf({ flags, choices, byDefault, repeats, help, of }: OptionRow): Setting {
  const [long = '', value] = flags.split(' ');
  // `--no-colour` is `colour`, which is true unless it is set to false.
  const name = long
    .replace(/^--(?:no-)?/, '')
    .replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
  return {
    name,
    kind: repeats ? 'texts' : value === undefined ? 'flag' : 'text',
    ...(choices && { choices }),
    ...(byDefault !== undefined && { byDefault }),
    help,
    of,
    isPath: (text) => PATHS.has(name) || (MAYBE_PATHS.has(name) && /\.(?:json|icc|icm)$/i.test(text)),
  };
}

/** `printerProfile` as `--printer-profile`. */
export function optionOf({ name }: Pick<Setting, 'name'>): string {
  return `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}

/** `printerProfile` as `BLANKCHECK_PRINTER_PROFILE`. */
export function environmentNameOf({ name }: Pick<Setting, 'name'>): string {
  return `BLANKCHECK_${name.replace(/[A-Z]/g, (letter) => `_${letter}`).toUpperCase()}`;
}
