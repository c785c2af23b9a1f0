import { quoteForSh } from './quoting.ts';
import type { Dropped } from './shortcut.ts';

export const SH_HEAD = '#!/bin/sh\n# Made by blankcheck shortcut\n';

/** The function `run`, which hands what it is given to the program; the program itself keeps the window open. */
export function shRun({ node, program, words }: Dropped): string {
  return `node=${quoteForSh(node)}
program=${quoteForSh(program)}

run() {
  if [ ! -x "$node" ] || [ ! -f "$program" ]; then
    printf '%s\\n' "Not there any more: $node or $program." 'Make this shortcut anew: blankcheck shortcut --help'
    read -r _ || :
    exit 2
  fi
  exec "$node" "$program" ${words.map(quoteForSh).join(' ')} -- "$@"
}
`;
}
