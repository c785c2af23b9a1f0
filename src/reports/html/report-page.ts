import type { CheckDefinition } from '../../checks/define-check.ts';
import { CHECKS } from '../../checks/index.ts';
import { summarise } from '../summary.ts';
import { sortByAttention } from '../worst-finding.ts';
import { contactSheet } from './contact-sheet.ts';
import { explanation } from './explanation.ts';
import { shown } from './markup.ts';
import { renderPage } from './page-shell.ts';
import { REPORT_STYLE } from './page-style.ts';
import { type PagePiece, pieceArticle } from './piece-article.ts';
import { verdictOf } from './verdict-badge.ts';

export interface ReportPageOptions {
  /** As in the summary of the run. */
  readonly passedOver: number;
  /** Which printer the colours were judged for. */
  readonly conditionName: string;
  /** Whose phrases tell the findings; the program's own by default. */
  readonly checks?: readonly CheckDefinition[];
  /** What the checks mean, by id, as Markdown of docs/findings/; of what was found, the page has what is given. */
  readonly explanations?: ReadonlyMap<string, string>;
}

/** Which artworks a filter leaves, by the class of their verdict; empty for all. */
const FILTERS = [
  { id: 'all', label: 'All', verdicts: [] },
  {
    id: 'attention',
    label: 'Needs attention',
    verdicts: ['unreadable', 'stop', 'not-written', 'look'],
  },
  { id: 'stop', label: 'Stop', verdicts: ['stop'] },
  { id: 'look', label: 'Look first', verdicts: ['look'] },
  { id: 'unreadable', label: 'Cannot read', verdicts: ['unreadable'] },
  { id: 'ready', label: 'Ready', verdicts: ['ready'] },
] as const;

const OVERLAYS = [
  { id: 'findings', label: 'Findings', isOn: true },
  { id: 'lines', label: 'Edge, safe and bleed lines', isOn: true },
  { id: 'gamut', label: 'Colours the printer cannot make', isOn: false },
  { id: 'dark', label: 'Very dark areas', isOn: false },
] as const;

/**
 * The report of a run as one HTML page for people who look: a contact sheet where there are several artworks, then each
 * on its blank with its findings in place, the proof beside it. It fetches nothing and holds no script; what is switched
 * is switched by its style alone. Same input, same bytes.
 */
export function renderReportPage(
  pieces: readonly PagePiece[],
  { passedOver, conditionName, checks = CHECKS, explanations = new Map() }: ReportPageOptions,
): string {
  const byReport = new Map(pieces.map((piece) => [piece.report, piece]));
  const sorted = sortByAttention(pieces.map(({ report }) => report)).map((report, index) => ({
    piece: byReport.get(report)!,
    id: `piece-${index + 1}`,
  }));
  const explained = checks.flatMap(({ id }) => {
    const markdown = isFound(id, pieces) ? explanations.get(id) : undefined;
    return markdown === undefined ? [] : [{ id, markdown }];
  });
  const explainedIds = new Set(explained.map(({ id }) => id));
  const isMany = sorted.length > 1;
  const articles = sorted.map(
    ({ piece, id }) =>
      `<div class="shown ${verdictOf(piece.report)}">${pieceArticle(piece, id, checks, explainedIds)}</div>`,
  );
  const body = [
    header(pieces, passedOver, conditionName),
    '<main>',
    toolbar(pieces, isMany),
    isMany ? contactSheet(sorted) : '',
    ...articles,
    about(explained),
    '</main>',
    '<footer><p>A screen shows colours otherwise than a press: a pressed swatch has the last word. What was not checked is listed as such, and is not passed.</p></footer>',
  ].join('\n');
  return renderPage('report', {
    title: 'Report of blankcheck',
    style: `${REPORT_STYLE}${filterStyle()}`,
    body,
  });
}

function isFound(check: string, pieces: readonly PagePiece[]): boolean {
  return pieces.some(({ report: { outcomes } }) =>
    outcomes.some((outcome) => outcome.check === check && outcome.status === 'found'),
  );
}

/** On the page itself, so that it can be read where there is no program and no network. */
function about(explained: readonly { readonly id: string; readonly markdown: string }[]): string {
  if (explained.length === 0) return '';
  const sections = explained.map(({ id, markdown }) => explanation(id, markdown));
  return `<section class="about" aria-labelledby="about-name"><h2 id="about-name">What the findings mean</h2>${sections.join('')}</section>`;
}

function header(pieces: readonly PagePiece[], passedOver: number, conditionName: string): string {
  const { artworks, ready, look, stop, unreadable } = summarise(
    pieces.map(({ report }) => report),
    passedOver,
  );
  const counts = [
    [stop, 'to stop'],
    [look, 'to look at'],
    [unreadable, 'unreadable'],
    [ready, 'ready to print'],
  ] as const;
  const told = counts.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`);
  const over =
    passedOver > 0 ? ` Passed over: ${passedOver}, no artwork, hidden, or print-ready already.` : '';
  return `<header class="top"><h1>Report</h1><p>${artworks === 1 ? '1 artwork' : `${artworks} artworks`}: ${told.join(', ') || 'none'}.${over}</p><p>Colours judged for: ${shown(conditionName)}</p></header>`;
}

function toolbar(pieces: readonly PagePiece[], isMany: boolean): string {
  const overlays = OVERLAYS.map(
    ({ id, label, isOn }) =>
      `<label class="key-${id}"><input type="checkbox" id="show-${id}"${isOn ? ' checked' : ''}><span class="key" aria-hidden="true"></span>${label}</label>`,
  );
  const filters = FILTERS.map(({ id, label, verdicts }) => {
    const count = pieces.filter(
      ({ report }) => verdicts.length === 0 || (verdicts as readonly string[]).includes(verdictOf(report)),
    ).length;
    return `<label><input type="radio" name="only" id="only-${id}"${id === 'all' ? ' checked' : ''}${count === 0 ? ' disabled' : ''}>${label} (${count})</label>`;
  });
  return [
    '<form class="tools">',
    `<fieldset><legend>Show on the art</legend>${overlays.join('')}</fieldset>`,
    isMany ? `<fieldset><legend>Show artworks</legend>${filters.join('')}</fieldset>` : '',
    '</form>',
  ].join('');
}

/** Rules that hide what a filter or a switch leaves out. */
function filterStyle(): string {
  const filters = FILTERS.filter(({ verdicts }) => verdicts.length > 0).map(({ id, verdicts }) => {
    const kept = verdicts.map((verdict) => `:not(.${verdict})`).join('');
    return `:root:has(#only-${id}:checked) :is(.contact li,.shown)${kept}{display:none}`;
  });
  const overlays = OVERLAYS.map(
    ({ id }) => `:root:has(#show-${id}:not(:checked)) .figure .${id}{display:none}`,
  );
  return [...filters, ...overlays].join('\n');
}
