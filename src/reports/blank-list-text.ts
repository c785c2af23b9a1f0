import type { BlankRecord } from '../catalogue/records.ts';
import { sizeInWords } from './body-words.ts';
import { hang, type Page, paint } from './page.ts';

const HEADINGS = ['id', 'name', 'size', 'surface', 'family'] as const;
const GAP = '  ';
const TAPERED =
  'Tapered bodies: diameter above/below x print height; their paper is an arc. Straight round bodies: flat paper, way round x height.';

type Row = readonly string[];

/**
 * Blanks as a table: id, name, size in mm and inches, surface, family. Where the page is too narrow for one line
 * each, id and name stand on one line and the rest below. Empty for no blanks.
 */
export function renderBlankList(blanks: readonly BlankRecord[], page: Page): string {
  if (blanks.length === 0) return '';
  const rows = blanks.map(cellsOf);
  const widths = HEADINGS.map((heading, i) => Math.max(heading.length, ...rows.map((row) => row[i]!.length)));
  const onOneLine =
    asLine(
      widths.map((width) => 'x'.repeat(width)),
      widths,
    ).length <= page.width;
  const lines = onOneLine
    ? [paint(asLine(HEADINGS, widths), 'strong', page), ...rows.map((row) => asLine(row, widths))]
    : rows.flatMap((row) => asTwoLines(row, widths, page));
  const legend = blanks.some(({ wrap }) => wrap) ? ['', ...hang('', TAPERED, page)] : [];
  return `${[...lines, ...legend].join('\n')}\n`;
}

function cellsOf(blank: BlankRecord): Row {
  return [blank.id, blank.name, sizeInWords(blank), blank.surface, blank.family ?? ''];
}

function asLine(cells: Row, widths: readonly number[]): string {
  return cells
    .map((cell, i) => cell.padEnd(widths[i]!))
    .join(GAP)
    .trimEnd();
}

function asTwoLines(row: Row, widths: readonly number[], page: Page): readonly string[] {
  const [id = '', name = ''] = row;
  return [
    `${paint(id.padEnd(widths[0]!), 'strong', page)}${GAP}${name}`,
    `    ${asLine(row.slice(2), widths.slice(2))}`,
  ];
}
