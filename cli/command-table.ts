export type CommandName =
  | 'prepare'
  | 'check'
  | 'sheet'
  | 'blanks'
  | 'press'
  | 'suits'
  | 'inspect'
  | 'calibrate'
  | 'record'
  | 'history'
  | 'explain'
  | 'completions'
  | 'shortcut'
  | 'limits'
  | 'config';

/** One command as `--help` shows it. */
export interface CommandRow {
  readonly name: CommandName;
  readonly takes: string;
  readonly takesHelp: string;
  readonly help: string;
  readonly examples: readonly string[];
}

const ARTWORKS = 'files, folders, ZIP archives, or - for standard input';

export const COMMANDS: readonly CommandRow[] = [
  {
    name: 'prepare',
    takes: '<artwork...>',
    takesHelp: ARTWORKS,
    help: 'check, then write the mirrored, padded print-ready file (the default command)',
    examples: [
      'blankcheck pear-label.png --blank tile-ceramic-8in',
      'blankcheck prepare markers/ --blank slate-rect-15x20cm --width 120mm --out press-today',
      'blankcheck prepare stall-sign.png --blank 200x150mm --fit cover --dry-run',
    ],
  },
  {
    name: 'check',
    takes: '<artwork...>',
    takesHelp: ARTWORKS,
    help: 'check only, write nothing but the proof that is asked for',
    examples: [
      'blankcheck check herb-pack.zip --blank coaster-ceramic-round-4in --fail-on warning',
      'blankcheck check seedling.svg --blank round:95mm --json > seedling.json',
    ],
  },
  {
    name: 'sheet',
    takes: '<artwork...>',
    takesHelp: ARTWORKS,
    help: 'check, then lay the pieces together on as few whole pages as possible, with marks',
    examples: ['blankcheck sheet basil.png mint.png --blank 30x60mm --copies 12 --sheet a4'],
  },
  {
    name: 'blanks',
    takes: '[words...]',
    takesHelp: 'words of id, name or family, or a size in mm or inches',
    help: 'list the catalogue, or the blanks that match the words',
    examples: ['blankcheck blanks slate', 'blankcheck blanks tile 8in'],
  },
  {
    name: 'suits',
    takes: '<artwork...>',
    takesHelp: ARTWORKS,
    help: 'say for which blanks an artwork is fit: sizes, resolution, proportions, full bleed',
    examples: ['blankcheck suits seedling.svg', 'blankcheck suits downloads/ --among slate --at-least good'],
  },
  {
    name: 'press',
    takes: '<blank>',
    takesHelp: 'a blank of the catalogue',
    help: 'print the press card of a blank: recipe, layers, cautions',
    examples: [
      'blankcheck press mug-11oz',
      'blankcheck press tile-ceramic-8in --art potting-shed.png --width 7in --page card.html',
    ],
  },
  {
    name: 'inspect',
    takes: '<print-ready...>',
    takesHelp: 'print-ready files, folders or ZIP archives of them, or - for standard input',
    help: 'say what a print-ready file is: size, mirroring, blank, art, and whether it was changed since',
    examples: ['blankcheck inspect print-ready/pear-label.tile-ceramic-8in.png'],
  },
  {
    name: 'calibrate',
    takes: '',
    takesHelp: '',
    help: 'tell from two measured rulers whether a printer prints at its size, and store a small correction',
    examples: ['blankcheck calibrate --printer shed-printer.json --ruler 100mm,99.6mm'],
  },
  {
    name: 'record',
    takes: '',
    takesHelp: '',
    help: 'write down what was pressed and how it came out: a line in a ledger that only grows',
    examples: [
      'blankcheck record --blank tile-ceramic-8in --art pear-label.png --temperature 400F --time 5min --pressure firm --result 4 --defect faded',
    ],
  },
  {
    name: 'history',
    takes: '[words...]',
    takesHelp: 'words that occur in a record: art, blank, lot, printer, paper, defect, note, date',
    help: 'show what was recorded, what worked first',
    examples: ['blankcheck history tile firm', 'blankcheck history --csv > pressed.csv'],
  },
  {
    name: 'explain',
    takes: '[findings...]',
    takesHelp: 'checks, or codes of theirs, as the report names them; all are listed without a word',
    help: 'say what a finding means, why it matters, and what to do',
    examples: ['blankcheck explain bleed-cover', 'blankcheck explain shadow-merge'],
  },
  {
    name: 'completions',
    takes: '<shell>',
    takesHelp: 'bash, zsh, fish or powershell',
    help: 'print the script by which a shell completes commands, options and blanks',
    examples: ['blankcheck completions bash'],
  },
  {
    name: 'shortcut',
    takes: '',
    takesHelp: '',
    help: 'make something to drop pictures on in your file manager, in place of typing',
    examples: [
      'blankcheck shortcut --blank tile-ceramic-8in --to Desktop',
      'blankcheck shortcut --ask --to Desktop --for windows',
    ],
  },
  {
    name: 'limits',
    takes: '',
    takesHelp: '',
    help: 'list what is refused as too large or too slow; --limit raises it',
    examples: ['blankcheck limits'],
  },
  {
    name: 'config',
    takes: '',
    takesHelp: '',
    help: 'show the settings in force and where each comes from: defaults, your file, blankcheck.config.json, BLANKCHECK_<NAME>',
    examples: ['blankcheck config', 'blankcheck config --json'],
  },
];
