import type { CommandName } from './command-table.ts';
import { COLOUR_OPTIONS } from './options/colour-options.ts';
import type { OptionRow } from './options/option-row.ts';
import { OUTPUT_OPTIONS } from './options/output-options.ts';
import { PAGE_OPTIONS } from './options/page-options.ts';
import { PLACING_OPTIONS } from './options/placing-options.ts';
import { RECORD_OPTIONS } from './options/record-options.ts';
import { RUN_OPTIONS } from './options/run-options.ts';

/** Every option, in the order in which help shows them. */
export const OPTIONS: readonly OptionRow[] = [
  ...PLACING_OPTIONS,
  ...COLOUR_OPTIONS,
  ...PAGE_OPTIONS,
  ...OUTPUT_OPTIONS,
  ...RECORD_OPTIONS,
  ...RUN_OPTIONS,
];

/** The options of a command, in the order of the table. */
export function optionsOf(command: CommandName): readonly OptionRow[] {
  return OPTIONS.filter(({ of }) => of.includes(command));
}

export const EXIT_CODE_HELP = `Exit codes:
  0    clean
  1    findings at or above --fail-on, an artwork that cannot be read, or a file
       that cannot be written
  2    a command, option, blank or file that does not exist or does not fit
  3    a fault of the program
  130  interrupted (143 and 129 where the system asked it to end)

Standard output carries data only: the paths of the files written, or JSON.
The report for people is on standard error. An artwork that is called like a
command is given as ./check, or after --.`;
