import type { CommandName } from '../command-table.ts';

/** One option as it is typed and as `--help` shows it; the command line is parsed by this table too. */
export interface OptionRow {
  readonly flags: string;
  readonly help: string;
  readonly choices?: readonly string[];
  readonly byDefault?: string;
  readonly of: readonly CommandName[];
  /** Known, so that it can be refused in words, but not offered. */
  readonly hidden?: true;
  /** May be given several times. */
  readonly repeats?: true;
}
