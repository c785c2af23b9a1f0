import { ALL, ART, PIECES } from './command-groups.ts';
import type { OptionRow } from './option-row.ts';

/** How a run goes, and how it is told. */
export const RUN_OPTIONS: readonly OptionRow[] = [
  { flags: '--recursive', help: 'folders with all that is below them', of: [...ART, 'suits', 'inspect'] },
  {
    flags: '--limit <name=value>',
    help: 'replace a limit of: blankcheck limits, such as maxPixels=400000000',
    of: [...ART, 'suits', 'inspect'],
    repeats: true,
  },
  {
    flags: '--fresh',
    help: 'judge what is in folders anew, also what is unchanged since the last run',
    of: ['prepare'],
  },
  {
    flags: '--watch',
    help: 'go on with what lands in the folders, each file once it has rested for 2 s, until Ctrl-C',
    of: PIECES,
  },
  {
    flags: '--jobs <n>',
    help: 'how many artworks of several are judged at once (default: one for each core, as far as the memory goes)',
    of: PIECES,
  },
  {
    flags: '--memory <size>',
    help: 'what they may need together, such as 2GB; an artwork that needs more is judged alone (default: a quarter of the machine)',
    of: PIECES,
  },
  { flags: '--json', help: 'one JSON document on standard output, and nothing else there', of: ALL },
  {
    flags: '--json-lines',
    help: 'each result as one line of JSON on standard output as soon as it is there, then a line with the summary',
    of: PIECES,
  },
  {
    flags: '--csv <file>',
    help: 'a table of the results for a spreadsheet; replaces one of an earlier run, any other file with --force only',
    of: PIECES,
  },
  {
    flags: '--fail-on <severity>',
    help: 'findings that make the exit code 1',
    choices: ['error', 'warning', 'advice', 'never'],
    byDefault: 'error',
    of: ART,
  },
  { flags: '--quiet', help: 'say only what went wrong', of: ART },
  { flags: '--pause', help: 'wait for Return at the end, so that a window stays open', of: ART },
  { flags: '--no-colour', help: 'no colours (also --no-color, NO_COLOR)', of: ALL },
  { flags: '--no-color', help: 'the same', of: ALL, hidden: true },
];
