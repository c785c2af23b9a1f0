import { hang, type Page, paint } from './page.ts';
import type { Status, Summary } from './report.ts';
import { VERDICT_STYLES, VERDICT_WORDS } from './verdict-words.ts';

const VERDICTS = Object.keys(VERDICT_WORDS) as readonly Status[];

/**
 * The count of a run in a line or two, with a newline at its end; what is zero is left out. `notWritten` of what is ready
 * could not be written, and is counted as that: an older file that lies there would be taken for it.
 */
export function renderTextSummary(summary: Summary, page: Page, notWritten = 0): string {
  const { artworks, ready, look, stop, unreadable, passedOver } = summary;
  const counts = { ready: ready - notWritten, look, stop, unreadable };
  const told = VERDICTS.filter((status) => counts[status] > 0).map((status) =>
    paint(`${counts[status]} ${VERDICT_WORDS[status]}`, VERDICT_STYLES[status], page),
  );
  if (notWritten > 0) told.push(paint(`${notWritten} NOT WRITTEN`, 'stop', page));
  const total = artworks === 1 ? '1 artwork: ' : `${artworks} artworks: `;
  const lines = [
    ...hang(total, told.join(', ') || 'none', page, 'strong'),
    ...(passedOver > 0 ? hang('Passed over: ', tellPassedOver(passedOver), page) : []),
  ];
  return `${lines.join('\n')}\n`;
}

function tellPassedOver(count: number): string {
  const files = count === 1 ? '1 file that is' : `${count} files that are`;
  return `${files} no artwork, hidden or already print-ready.`;
}
