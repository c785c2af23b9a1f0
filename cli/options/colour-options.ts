import { ART } from './command-groups.ts';
import type { OptionRow } from './option-row.ts';

/** The printer, what it makes of colours, and what is mended before it is asked. */
export const COLOUR_OPTIONS: readonly OptionRow[] = [
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
];
