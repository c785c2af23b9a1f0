import type { ArtworkReport } from '../report.ts';
import { VERDICT_WORDS } from '../verdict-words.ts';

/** `not-written`: ready, and yet without the file that was asked for. */
export type Verdict = ArtworkReport['status'] | 'not-written';

export function verdictOf({ status, error }: Pick<ArtworkReport, 'status' | 'error'>): Verdict {
  return status === 'ready' && error ? 'not-written' : status;
}

export const VERDICT_TITLES: Readonly<Record<Verdict, string>> = {
  ...VERDICT_WORDS,
  'not-written': 'NOT WRITTEN',
};

/** Shapes beside the words, which say it too; in a box of 16 by 16. */
export const VERDICT_SHAPES: Readonly<Record<Verdict, string>> = {
  ready: '<circle cx="8" cy="8" r="7"/><path d="M4.5 8.2 7 10.7 11.5 5.5"/>',
  look: '<path class="body" d="M8 0.8 15.5 14.5H0.5Z"/><path d="M8 5.5V10M8 11.5V13"/>',
  stop: '<path class="body" d="M5 1H11L15 5V11L11 15H5L1 11V5Z"/><path d="M5 5 11 11M11 5 5 11"/>',
  unreadable: '<rect x="1.5" y="1" width="13" height="14"/><path d="M4.5 4.5 11.5 11.5M11.5 4.5 4.5 11.5"/>',
  'not-written': '<rect x="1.5" y="1" width="13" height="14"/><path d="M4 8H12"/>',
};

export function verdictBadge(report: Pick<ArtworkReport, 'status' | 'error'>): string {
  const verdict = verdictOf(report);
  return `<p class="verdict ${verdict}"><svg viewBox="0 0 16 16" aria-hidden="true">${VERDICT_SHAPES[verdict]}</svg>${VERDICT_TITLES[verdict]}</p>`;
}
