import { formatSize } from '../geometry/length.ts';
import { type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { tellResolution } from './resolution-words.ts';
import { VERDICT_STYLES, VERDICT_WORDS } from './verdict-words.ts';
import { showHidden } from './visible-text.ts';
import { findWorst, sortByAttention } from './worst-finding.ts';

const HEADS = ['Verdict', 'Size', 'ppi', 'Worst finding', 'File'] as const;

/**
 * The artworks of a run, one a line, what needs attention first, with a newline at its end. The file comes last and is never
 * cut, so that it can be copied; nothing that came from a file can steer the terminal.
 */
export function renderRunTable(reports: readonly ArtworkReport[], page: Page): string {
  const sorted = sortByAttention(reports);
  const rows = sorted.map((report) => {
    const notWritten = report.error !== null && report.status !== 'unreadable';
    return {
      style: notWritten ? 'stop' : VERDICT_STYLES[report.status],
      cells: [
        notWritten && report.status === 'ready' ? 'NOT WRITTEN' : VERDICT_WORDS[report.status],
        report.placementMm
          ? formatSize(report.placementMm.width, report.placementMm.height).replace(/ \(.*/, '')
          : '-',
        tellResolution(report)?.replace(' ppi', '') ?? '-',
        findWorst(report) ?? '-',
        showHidden(report.artwork.path),
      ],
    } as const;
  });
  const widths = HEADS.map((head, column) =>
    Math.max(head.length, ...rows.map(({ cells }) => cells[column]!.length)),
  );
  const line = (cells: readonly string[]) =>
    cells.map((cell, column) => (column === cells.length - 1 ? cell : pad(cell, widths[column]!, column)));
  const lines = rows.map(({ style, cells }) => {
    const [verdict, ...rest] = line(cells);
    return `${paint(verdict!, style, page)}  ${rest.join('  ')}`;
  });
  return `${[paint(line(HEADS).join('  '), 'strong', page), ...lines].join('\n')}\n`;
}

function pad(text: string, width: number, column: number): string {
  return HEADS[column] === 'ppi' ? text.padStart(width) : text.padEnd(width);
}
