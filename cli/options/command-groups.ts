import type { CommandName } from '../command-table.ts';

// Which commands an option is of: these go together.
export const PIECES: readonly CommandName[] = ['prepare', 'check'];
export const ART: readonly CommandName[] = [...PIECES, 'sheet'];
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
export const PLACED: readonly CommandName[] = [...ART, 'press'];
export const ALL: readonly CommandName[] = [...ART, 'suits', 'inspect', 'explain', ...LISTS];
