import { escapeForSet } from './quoting.ts';
import type { Dropped, Shortcut } from './shortcut.ts';

const HEAD = '@echo off\r\nrem Made by blankcheck shortcut\r\n';

/** A batch file: the file manager starts it with what is dropped on it, and so does its menu "Send to". */
export function windowsShortcut({ name, node, program, words }: Dropped): Shortcut {
  const lines = [
    'rem Of very many files drop their folder: a command line ends after 8191 characters.',
    'chcp 65001 >nul',
    'setlocal DisableDelayedExpansion',
    `set "node=${escapeForSet(node)}"`,
    `set "program=${escapeForSet(program)}"`,
    ...words.map((word, index) => `set "word${index}=${escapeForSet(word)}"`),
    'setlocal EnableDelayedExpansion',
    'rem The arguments are cut at an ampersand of a name without spaces; the line that started this window is not.',
    'set "art=!cmdcmdline:*/c "=!"',
    'set "art=!art:~0,-1!"',
    'set "art=!art:*" =!"',
    'if not defined art (',
    '  echo Drop pictures, folders or ZIP archives on this file.',
    '  pause',
    '  exit',
    ')',
    'if not exist "!program!" (',
    '  echo Not there any more: "!program!". Make this shortcut anew: blankcheck shortcut --help',
    '  pause',
    '  exit 2',
    ')',
    `"!node!" "!program!" ${words.map((_, index) => `"!word${index}!"`).join(' ')} -- !art!`,
    'rem Ends the window too, so that what stands behind an ampersand of a name is not run.',
    'exit',
  ];
  return {
    files: [
      {
        name: `${name}.cmd`,
        head: HEAD,
        text: `${HEAD}${lines.map((line) => `${line}\r\n`).join('')}`,
        mode: 0o644,
      },
    ],
    next: `Drop pictures, folders or ZIP archives on "${name}.cmd". To have it under "Send to" too: press Windows and R, type shell:sendto, and lay a shortcut of it into the folder that opens.`,
  };
}
