import { COST_INPUTS, DEFECTS, PRESSURES } from '../src/index.ts';
import type { CommandName } from './command-table.ts';
import { SYSTEMS } from './shortcut/systems.ts';

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

const PIECES: readonly CommandName[] = ['prepare', 'check'];
const ART: readonly CommandName[] = [...PIECES, 'sheet'];
const LISTS: readonly CommandName[] = [
  'blanks',
  'press',
  'calibrate',
  'record',
  'history',
  'limits',
  'config',
];
/** What art is placed by. */
const PLACED: readonly CommandName[] = [...ART, 'press'];
const ALL: readonly CommandName[] = [...ART, 'suits', 'inspect', 'explain', ...LISTS];

export const OPTIONS: readonly OptionRow[] = [
  {
    flags: '--blank <blank>',
    help: 'what is pressed: an id of the catalogue (see: blankcheck blanks), a JSON file with one blank, or a size such as 200x200mm, 8x10in, round:95mm',
    of: [...ART, 'record', 'shortcut'],
  },
  {
    flags: '--ask',
    help: 'ask for the blank and the size where they are not said; at a terminal only',
    of: [...PIECES, 'shortcut'],
  },
  {
    flags: '--measured <size>',
    help: 'real size of the blank in hand, such as 197x197mm or round:96mm; of a round body top:89mm,bottom:70mm,height:140mm, or strip:232mm,height:208mm',
    of: [...PLACED, 'record'],
  },
  {
    flags: '--wrap <where>',
    help: 'on a round body: one-face, two-faces (left and right of the handle), around, or repeat:n (default: in the middle of the paper, opposite the handle)',
    of: PLACED,
  },
  {
    flags: '--hand <which>',
    help: 'with --wrap one-face: the face that somebody sees who drinks with this hand (default: right)',
    choices: ['left', 'right'],
    of: PLACED,
  },
  {
    flags: '--development <kind>',
    help: 'on a tapered body: auto gives the arc of paper that it needs, rectangle a straight strip all the same (default: auto)',
    choices: ['auto', 'rectangle'],
    of: PLACED,
  },
  {
    flags: '--width <length>',
    help: 'printed width of the visible art, such as 178mm, 7in, 36pt',
    of: PLACED,
  },
  {
    flags: '--height <length>',
    help: 'printed height of it; one of the two keeps the proportions',
    of: PLACED,
  },
  {
    flags: '--fit <how>',
    help: 'without a size: inside puts all art within the safe line, cover fills edge and bleed (default: inside)',
    choices: ['inside', 'cover'],
    of: PLACED,
  },
  {
    flags: '--turn <degrees>',
    help: 'turn the art clockwise first',
    choices: ['0', '90', '180', '270'],
    of: PLACED,
  },
  {
    flags: '--offset <x,y>',
    help: 'move the art right and down from the middle, such as 2mm,-1mm',
    of: PLACED,
  },
  { flags: '--bleed <length>', help: "in place of the blank's own bleed", of: PLACED },
  { flags: '--safe <length>', help: "in place of the blank's own safe distance", of: PLACED },
  {
    flags: '--surface <side>',
    help: "in place of the blank's own: art on the first surface is mirrored, on the second it is not",
    choices: ['first', 'second'],
    of: PLACED,
  },
  {
    flags: '--ppi <n>',
    help: "pixels per inch of the print-ready file, 1 to 2400 (default: the printer's, else the blank's own, else 300)",
    of: ART,
  },
  {
    flags: '--printer <file>',
    help: 'the record of your printer, a JSON file: its margins, ppi, and whether its driver mirrors',
    of: [...ART, 'calibrate'],
  },
  {
    flags: '--ruler <x,y>',
    help: 'what the rulers of a printed sheet measure, across and along the sheet as it was fed, such as 100mm,99.6mm',
    of: ['calibrate'],
  },
  {
    flags: '--ruler-length <length>',
    help: 'what the rulers say of themselves where that is not 100 mm: one length, or x,y',
    of: ['calibrate'],
  },
  {
    flags: '--background <colour>',
    help: 'what fills the padding: a CSS colour, or transparent (default: white)',
    of: ART,
  },
  {
    flags: '--condition <which>',
    help: 'which colours the printer can make: an id (coated-reference), or the ICC file of your own printer, paper and ink (default: coated-reference, a generic stand-in and not your printer)',
    of: ART,
  },
  {
    flags: '--printer-profile <file>',
    help: 'the ICC file of your printer, paper and ink: the print-ready file is converted by it, and the print dialog must not manage colour',
    of: ART,
  },
  {
    flags: '--intent <how>',
    help: 'with --printer-profile: how colours are converted that the printer cannot make (default: relative)',
    choices: ['perceptual', 'relative', 'saturation', 'absolute'],
    of: ART,
  },
  {
    flags: '--no-black-point-compensation',
    help: 'with --printer-profile: do not fit the black of the art to that of the printer',
    of: ART,
  },
  {
    flags: '--mend <names>',
    help: 'mend the art before it is judged, such as into-gamut; several with commas between them (the README lists them). The artwork itself is not changed',
    of: ART,
  },
  {
    flags: '--extend <how>',
    help: 'with --mend extend-edges: go on beyond the rim with its pixels, mirrored at it, or blurred along it (default: reflect)',
    choices: ['edge', 'reflect', 'blur'],
    of: ART,
  },
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
  {
    flags: '--out <folder>',
    help: 'where print-ready files go (default: print-ready beside each artwork)',
    of: ART,
  },
  {
    flags: '--proof <folder>',
    help: 'write a picture of what the pressed blank will look like there, <art>.<blank>.proof.png; to look at, never to print',
    of: PIECES,
  },
  {
    flags: '--proof-mark',
    help: 'stripe in the proof what is out of gamut',
    of: PIECES,
  },
  {
    flags: '--picture <folder>',
    help: 'write one picture of each artwork there for a phone or a message, <art>.<blank>.picture.png: the blank, its lines, the findings in place and in words',
    of: PIECES,
  },
  {
    flags: '--report <file>',
    help: 'write a page to look at in a browser, such as report.html: each artwork on its blank with what was found in its place; replaces one of an earlier run, any other file with --force only',
    of: PIECES,
  },
  {
    flags: '--cost',
    help: 'say what a good piece costs, with its ink by measured cover, and what that leaves out',
    of: PIECES,
  },
  {
    flags: '--cost-of <name=value>',
    help: `for --cost, in your own currency, such as blank=2.50: ${Object.keys(COST_INPUTS).join(', ')}`,
    of: PIECES,
    repeats: true,
  },
  {
    flags: '--page <file>',
    help: 'write the card as a page to print too, such as card.html; replaces one of its own, any other file with --force only',
    of: ['press'],
  },
  {
    flags: '--for <system>',
    help: 'whose file manager it is for (default: that of this machine)',
    choices: SYSTEMS,
    of: ['shortcut'],
  },
  { flags: '--to <folder>', help: 'where it goes, such as the desktop', of: ['shortcut'] },
  { flags: '--remove', help: 'take it away again', of: ['shortcut'] },
  { flags: '--force', help: 'replace files that are there', of: [...ART, 'press', 'shortcut'] },
  { flags: '--anyway', help: 'write the file although a finding says stop', of: ART },
  { flags: '--dry-run', help: 'do all but write, and show the plan', of: [...ART, 'calibrate'] },
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
