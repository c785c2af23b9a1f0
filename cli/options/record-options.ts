import { DEFECTS, PRESSURES } from '../../src/index.ts';
import type { OptionRow } from './option-row.ts';

/** What an art suits, and what is kept of a pressing. */
export const RECORD_OPTIONS: readonly OptionRow[] = [
  {
    flags: '--among <words>',
    help: 'only the blanks that the words find, as in blankcheck blanks <words>',
    of: ['suits'],
  },
  {
    flags: '--at-least <resolution>',
    help: 'only the blanks on which the resolution is at least that, at the largest size they take',
    choices: ['acceptable', 'good'],
    of: ['suits'],
  },
  {
    flags: '--full-bleed',
    help: 'only the blanks that the art can cover off the edge all round',
    of: ['suits'],
  },
  {
    flags: '--result <n>',
    help: 'how it came out, from 1 (lost) to 5 (as good as it gets)',
    choices: ['1', '2', '3', '4', '5'],
    of: ['record'],
  },
  {
    flags: '--defect <words>',
    help: `what is wrong with it, with commas between: ${Object.keys(DEFECTS).join(', ')}`,
    of: ['record'],
  },
  {
    flags: '--temperature <temperature>',
    help: 'as the press was set, such as 400F or 204C',
    of: ['record'],
  },
  {
    flags: '--platen-temperature <temperature>',
    help: 'as a thermometer showed it on the platen',
    of: ['record'],
  },
  { flags: '--time <time>', help: 'how long it was pressed, such as 60s, 5min, 1min30s', of: ['record'] },
  {
    flags: '--pressure <word>',
    help: 'how firmly; tension is that of wraps and sleeves',
    choices: PRESSURES,
    of: ['record'],
  },
  {
    flags: '--art <file>',
    help: 'the artwork; record takes its print-ready file too and keeps its hash, press makes the card of this very piece',
    of: ['record', 'press'],
  },
  { flags: '--lot <words>', help: 'lot or delivery of the blank', of: ['record'] },
  { flags: '--printer <name>', help: 'what you call the printer, or the file of its record', of: ['record'] },
  { flags: '--paper <words>', help: 'transfer paper', of: ['record'] },
  {
    flags: '--photo <file>',
    help: 'photo of the piece; recorded also where it is not there',
    of: ['record'],
  },
  { flags: '--note <words>', help: 'anything else, for the next time', of: ['record'] },
  { flags: '--date <day>', help: 'when it was pressed, such as 2026-03-14 (default: now)', of: ['record'] },
  {
    flags: '--ledger <file>',
    help: 'the file in which it is written down (default: blankcheck-ledger.jsonl in this folder)',
    of: ['record', 'history', 'press'],
  },
  { flags: '--csv', help: 'a table for spreadsheets on standard output', of: ['history'] },
];
