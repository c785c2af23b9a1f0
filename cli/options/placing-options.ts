import { ART, PIECES, PLACED } from './command-groups.ts';
import type { OptionRow } from './option-row.ts';

/** What art is placed by: the blank, the size, the place, the resolution. */
export const PLACING_OPTIONS: readonly OptionRow[] = [
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
];
