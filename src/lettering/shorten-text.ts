import { charactersOf, measureText } from './measure-text.ts';

/** Stands for what was left out. */
const ELLIPSIS = '…';

/**
 * The text itself where it is no wider than `maxWidthMm`; else as much of its beginning and its end as fits round an
 * ellipsis, since the end of a name tells as much as its beginning. Empty where not even the ellipsis fits.
 */
export function shortenText(text: string, capHeightMm: number, maxWidthMm: number): string {
  const fits = (candidate: string) => measureText(candidate, capHeightMm) <= maxWidthMm;
  if (fits(text)) return text;
  const characters = charactersOf(text);
  const keep = (count: number) => {
    const head = characters.slice(0, Math.ceil(count / 2)).join('');
    const tail = characters.slice(characters.length - Math.floor(count / 2)).join('');
    return `${head.trimEnd()}${ELLIPSIS}${tail.trimStart()}`;
  };
  // More characters are never narrower: the most that fit are found by halving.
  let most = -1;
  for (let low = 0, high = characters.length - 1; low <= high; ) {
    const middle = (low + high) >> 1;
    if (fits(keep(middle))) {
      most = middle;
      low = middle + 1;
    } else high = middle - 1;
  }
  return most < 0 ? '' : keep(most);
}
