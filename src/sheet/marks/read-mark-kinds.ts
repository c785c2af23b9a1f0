import { BlankcheckError } from '../../blankcheck-error.ts';
import { nearestIds } from '../../catalogue/nearest-ids.ts';
import { MARK_KINDS, type MarkKind } from './mark-kinds.ts';

/**
 * The marks in a list such as `step-wedge, nozzle-bars`, each once, in the order of `MARK_KINDS`.
 * @throws BlankcheckError `unknown-mark`
 */
export function readMarkKinds(text: string): readonly MarkKind[] {
  const words = text
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  const stranger = words.find((word) => !MARK_KINDS.some((kind) => kind === word));
  if (words.length === 0 || stranger !== undefined) throw unknown(stranger ?? text);
  return MARK_KINDS.filter((kind) => words.includes(kind));
}

function unknown(word: string): BlankcheckError {
  const near = nearestIds(word, MARK_KINDS, 3);
  const hint = near.length > 0 ? `Did you mean ${near.join(', ')}? ` : '';
  return new BlankcheckError(
    'unknown-mark',
    `Expected marks after --omit-marks, received "${word}".\n${hint}Name one or more of ${MARK_KINDS.join(', ')}, with commas between them.`,
  );
}
