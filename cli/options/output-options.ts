import { COST_INPUTS } from '../../src/index.ts';
import { SYSTEMS } from '../shortcut/systems.ts';
import { ART, PIECES } from './command-groups.ts';
import type { OptionRow } from './option-row.ts';

/** What is written, and where. */
export const OUTPUT_OPTIONS: readonly OptionRow[] = [
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
];
