import { type CsvCell, renderCsv } from './csv.ts';
import type { ArtworkReport } from './report.ts';
import { findCoarserPpi } from './resolution-words.ts';
import { showHidden } from './visible-text.ts';
import { findWorst, sortByAttention } from './worst-finding.ts';

const COLUMNS: Readonly<Record<string, (report: ArtworkReport) => CsvCell>> = {
  // A name is one line, whatever it holds.
  artwork: ({ artwork }) => showHidden(artwork.path),
  verdict: ({ status }) => status,
  widthMm: ({ placementMm }) => placementMm && tenths(placementMm.width),
  heightMm: ({ placementMm }) => placementMm && tenths(placementMm.height),
  // Down, so that none crosses a limit.
  ppi: (report) => {
    const ppi = findCoarserPpi(report);
    return ppi === null ? null : Math.floor(ppi);
  },
  worst: (report) => findWorst(report),
  errors: (report) => countOf(report, 'error'),
  warnings: (report) => countOf(report, 'warning'),
  advice: (report) => countOf(report, 'advice'),
  blank: ({ blank }) => blank.id,
  output: ({ output }) => output && showHidden(output.path),
  error: ({ error }) => error?.message,
  sha256: ({ artwork }) => artwork.sha256,
};

/** The first line of every such table, by which the program knows its own. */
export const RUN_CSV_HEAD: string = renderCsv(COLUMNS, []);

/** The results of a run as a table for spreadsheets, what needs attention first. */
export function renderRunCsv(reports: readonly ArtworkReport[]): string {
  return renderCsv(COLUMNS, sortByAttention(reports));
}

function countOf({ outcomes }: ArtworkReport, severity: string): number {
  const findings = outcomes.flatMap((outcome) => (outcome.status === 'found' ? outcome.findings : []));
  return findings.filter((finding) => finding.severity === severity).length;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
