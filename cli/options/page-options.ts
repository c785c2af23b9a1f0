import { ART, PIECES } from './command-groups.ts';
import type { OptionRow } from './option-row.ts';

/** What is printed on: the kind of file, the sheet, its marks, several pieces on it. */
export const PAGE_OPTIONS: readonly OptionRow[] = [
  {
    flags: '--format <kind>',
    help: 'kind of print-ready file: png, tiff or pdf (default: png, tiff for CMYK, pdf with --sheet)',
    choices: ['png', 'tiff', 'pdf'],
    of: ART,
  },
  {
    flags: '--sheet <sheet>',
    help: 'a whole page with marks in place of the piece alone: a4, letter, a3+ …, a size such as 200x300mm, or a roll such as roll:24in',
    of: ART,
  },
  {
    flags: '--dummy',
    help: 'with --sheet: the outline of the blank in place of the art, to be cut and tried on the bare blank with next to no ink',
    of: PIECES,
  },
  {
    flags: '--omit-marks <names>',
    help: 'with --sheet: marks that are not wanted, such as step-wedge,nozzle-bars (all of them: centre-ticks, roll-lines, ruler, mirror-witness, label, up-arrow, corner-marks, nozzle-bars, step-wedge)',
    of: ART,
  },
  {
    flags: '--job <file>',
    help: 'what to print, a JSON file in place of artworks: pieces, each with its blank, copies, second side, pair and place (the README shows one)',
    of: ['sheet'],
  },
  {
    flags: '--copies <n>',
    help: 'how many of each artwork (default: 1)',
    of: ['sheet'],
  },
  {
    flags: '--pair',
    help: 'a second piece with each, its mirror image, kept beside it on the same page',
    of: ['sheet'],
  },
  {
    flags: '--may-turn',
    help: 'pieces may lie turned by a quarter where more fit so',
    of: ['sheet'],
  },
  {
    flags: '--gutter <length>',
    help: 'at least this far from picture to picture (default: 3mm)',
    of: ['sheet'],
  },
  {
    flags: '--platen <size>',
    help: 'what the press takes at once, such as 380x380mm, where whole pages are pressed: all pieces of a page lie within it',
    of: ['sheet'],
  },
];
