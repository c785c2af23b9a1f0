import { BlankcheckError } from '../blankcheck-error.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';
import { DEFECTS, type Defect } from './vocabulary.ts';

/**
 * The defects in a list such as `faded, specks`, each once, in the order of the vocabulary.
 * @throws BlankcheckError `unknown-defect`
 */
export function readDefects(text: string): readonly Defect[] {
  const known = Object.keys(DEFECTS) as Defect[];
  const words = text
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  const strange = words.find((word) => !known.some((defect) => defect === word));
  if (strange !== undefined || words.length === 0) {
    const near = nearestIds(strange ?? '', known, 3);
    throw new BlankcheckError(
      'unknown-defect',
      `Expected defects after --defect, received "${strange ?? text}".\n${near.length > 0 ? `Did you mean ${near.join(', ')}? ` : ''}Name one or more of ${known.join(', ')}, with commas between them; anything else goes into --note.`,
    );
  }
  return known.filter((defect) => words.includes(defect));
}
