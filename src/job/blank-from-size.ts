import type { BlankRecord } from '../catalogue/records.ts';
import { formatSize } from '../geometry/length.ts';
import { parseSize } from '../geometry/size.ts';

/**
 * A blank known only by its size, such as `200x150mm` or `round:95mm`: first surface, no holes, and the bleed,
 * safe inset and resolution limits of the family that stands in for unknown blanks.
 * @throws BlankcheckError `bad-size`, `bad-length` or `length-without-unit`.
 */
export function blankFromSize(text: string): BlankRecord {
  const { kind, widthMm, heightMm } = parseSize(text, '--blank');
  const id = text
    .trim()
    .toLowerCase()
    .replaceAll(/\s+/g, '')
    .replaceAll('"', 'in')
    .replaceAll('×', 'x')
    .replace(':', '-');
  return {
    id,
    name: `${kind === 'round' ? 'round, ' : ''}${formatSize(widthMm, heightMm)}`,
    outline: { shape: kind === 'round' ? 'circle' : 'rect', widthMm, heightMm },
    surface: 'first',
  };
}
