import { listBlanks } from './catalogue.ts';
import { editDistance } from './edit-distance.ts';

/** Texts longer than this are no mistyped id, and comparing them would take long. */
const LONGEST_ID = 80;
/** Share of an id that may differ before it is no longer offered. */
const FARTHEST = 0.5;
/** What a word of the id that the text lacks costs, so that of two ids the one with less besides comes first. */
const LACKING_WORD = 0.05;

/** The blanks that someone who typed `text` may have meant: at most `count` ids, the nearest first; may be none. */
export function nearestBlankIds(text: string, count: number): readonly string[] {
  return nearestIds(
    text,
    listBlanks().map(({ id }) => id),
    count,
  );
}

/** The same among any ids. Compares whole texts and word by word, so that `8in-tile` finds `tile-ceramic-8in`. */
export function nearestIds(text: string, ids: readonly string[], count: number): readonly string[] {
  const typed = text.trim().toLowerCase();
  if (typed === '' || typed.length > LONGEST_ID) return [];
  return ids
    .map((id) => ({
      id,
      distance: Math.min(share(typed, id.toLowerCase()), byWords(typed, id.toLowerCase())),
    }))
    .filter(({ distance }) => distance <= FARTHEST)
    .sort((a, b) => a.distance - b.distance || (a.id < b.id ? -1 : 1))
    .slice(0, Math.max(0, count))
    .map(({ id }) => id);
}

function share(a: string, b: string): number {
  return editDistance(a, b) / Math.max(a.length, b.length, 1);
}

function byWords(typed: string, id: string): number {
  const words = wordsOf(typed);
  const ofId = wordsOf(id);
  if (words.length === 0 || ofId.length === 0) return 1;
  const sum = words.reduce((total, word) => total + Math.min(...ofId.map((other) => share(word, other))), 0);
  return sum / words.length + LACKING_WORD * Math.max(0, ofId.length - words.length);
}

function wordsOf(text: string): readonly string[] {
  return text.split(/[^\p{L}\p{N}.]+/u).filter((word) => word !== '');
}
