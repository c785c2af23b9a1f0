import { findSheet } from '../catalogue/find-sheet.ts';
import { looksLikeSize, parseSize } from '../geometry/size.ts';
import type { Printer } from './printer.ts';

/** The sheet that a word stands for, portrait: an id of the seeds or a size; null where it is neither. */
export function findPaper(word: string): Printer['paper'] | null {
  const sheet = findSheet(word);
  if (sheet) return { id: sheet.id, widthMm: sheet.widthMm, heightMm: sheet.heightMm };
  if (!looksLikeSize(word)) return null;
  try {
    const { kind, widthMm, heightMm } = parseSize(word, 'paper');
    if (kind === 'round') return null;
    return { id: word, widthMm: Math.min(widthMm, heightMm), heightMm: Math.max(widthMm, heightMm) };
  } catch {
    return null;
  }
}
