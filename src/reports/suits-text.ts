import { formatSize } from '../geometry/length.ts';
import type { BlankSuit } from '../job/suit-job.ts';
import { hang, type Page, paint, type Style } from './page.ts';
import type { SuitedArtwork } from './suits.ts';
import { showHidden } from './visible-text.ts';

const VERDICTS = {
  good: { word: 'GOOD', style: 'ready' },
  acceptable: { word: 'FAIR', style: 'look' },
  below: { word: 'COARSE', style: 'stop' },
} as const satisfies Record<BlankSuit['verdict'], { word: string; style: Style }>;

const WORD_WIDTH = 8;

/** The blanks that an artwork suits, most fitting first, two lines each; and what was left out. */
export function renderSuits({ path, error, blanks, leftOut }: SuitedArtwork, page: Page): string {
  const lines = [paint(showHidden(path), 'strong', page)];
  if (error) lines.push(...hang('  Cannot be read: ', showHidden(error.message), page));
  else if (blanks.length === 0 && leftOut.length === 0)
    lines.push('  Nothing in it suits what was asked for.');
  for (const suit of blanks) lines.push(...tellSuit(suit, page));
  if (leftOut.length > 0) {
    const why = 'no safe area is left on these.';
    lines.push(...hang('  Not looked at: ', `${leftOut.join(', ')}: ${why}`, page));
  }
  return `${lines.join('\n')}\n`;
}

function tellSuit(suit: BlankSuit, page: Page): readonly string[] {
  const { id, widthMm, heightMm, effectivePpi, verdict, fullBleed, fit } = suit;
  const { word, style } = VERDICTS[verdict];
  const ppi = `${Math.floor(effectivePpi + 1e-6)} ppi`;
  const proportions = `proportions ${Math.floor(fit * 100 + 1e-6)} %`;
  const facts = [
    formatSize(widthMm, heightMm),
    ppi,
    proportions,
    ...(fullBleed ? ['can bleed all round'] : []),
  ];
  const indent = ' '.repeat(WORD_WIDTH + 2);
  return [
    `  ${paint(word.padEnd(WORD_WIDTH), style, page)}${paint(id, 'strong', page)}`,
    ...hang(indent, facts.join(', '), page),
    ...tellSmaller(suit).flatMap((line) => hang(indent, line, page)),
  ];
}

/** Up to which size the resolution holds, where that of the blank is too much. */
function tellSmaller({ verdict, good, acceptable }: BlankSuit): readonly string[] {
  if (verdict === 'good') return [];
  const goodSize = `good up to ${formatSize(good.widthMm, good.heightMm)}`;
  if (verdict === 'acceptable') return [goodSize];
  return [`${goodSize}, fair up to ${formatSize(acceptable.widthMm, acceptable.heightMm)}`];
}
