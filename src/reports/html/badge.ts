import type { Severity } from '../../checks/finding.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import { decimal } from './markup.ts';

/** How the number of a badge is drawn: as text on a page that can set it, as outlines in a picture. */
export type Numeral = (
  text: string,
  middle: { readonly x: number; readonly y: number },
  size: number,
) => string;

export const textNumeral: Numeral = (text, { x, y }, size) =>
  `<text x="${decimal(x)}" y="${decimal(y)}" dy="0.35em" font-size="${decimal(size)}">${text}</text>`;

/** Told apart by its shape as well: eight corners stop, a diamond warns, a disc advises. */
export function badgeMarkup(
  number: number,
  { x, y, width }: Pick<RectMm, 'x' | 'y' | 'width'>,
  severity: Severity,
  numeral: Numeral,
): string {
  const middle = { x: x + width / 2, y: y + width / 2 };
  const at = (dx: number, dy: number) =>
    `${decimal(middle.x + dx * width)},${decimal(middle.y + dy * width)}`;
  const outline = {
    error: `<polygon points="${[at(-0.2, -0.48), at(0.2, -0.48), at(0.48, -0.2), at(0.48, 0.2), at(0.2, 0.48), at(-0.2, 0.48), at(-0.48, 0.2), at(-0.48, -0.2)].join(' ')}"/>`,
    warning: `<polygon points="${[at(0, -0.56), at(0.56, 0), at(0, 0.56), at(-0.56, 0)].join(' ')}"/>`,
    advice: `<circle cx="${decimal(middle.x)}" cy="${decimal(middle.y)}" r="${decimal(0.46 * width)}"/>`,
  }[severity];
  const size = width * (number > 99 ? 0.36 : 0.5);
  return `<g class="badge ${severity}">${outline}${numeral(String(number), middle, size)}</g>`;
}
