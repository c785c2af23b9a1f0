import type { CheckDefinition } from '../../checks/define-check.ts';
import type { Severity } from '../../checks/finding.ts';
import { formatLength, formatSize } from '../../geometry/length.ts';
import { costRows } from '../cost-words.ts';
import { type Found, listFound, nameOf } from '../list-found.ts';
import { listNotChecked } from '../not-checked.ts';
import { phraseFinding } from '../phrase.ts';
import type { ArtworkReport } from '../report.ts';
import { tellPlan } from '../step-words.ts';
import { subjectRows, tellOthers } from '../subject-rows.ts';
import { tellPrinting, tellWhyNotWritten } from '../text-file.ts';
import { tellWork } from '../verdict-words.ts';
import { explanationId } from './explanation.ts';
import { shown, shownName } from './markup.ts';
import { artFigure, proofFigure } from './piece-figures.ts';
import type { PieceView } from './piece-view.ts';
import { verdictBadge } from './verdict-badge.ts';

/** One artwork of a page. */
export interface PagePiece {
  readonly report: ArtworkReport;
  readonly view: PieceView;
}

const LABELS: Readonly<Record<Severity, string>> = { error: 'STOP', warning: 'LOOK', advice: 'NOTE' };

/**
 * All that is known of one artwork: verdict, pictures, findings with what to do, what was not checked, sizes, its file.
 * `explained` are the checks that the page has an explanation of.
 */
export function pieceArticle(
  { report, view }: PagePiece,
  id: string,
  checks: readonly CheckDefinition[],
  explained: ReadonlySet<string>,
): string {
  const found = listFound(report.outcomes);
  const work = tellWork(report);
  return [
    `<article id="${id}" class="piece" aria-labelledby="${id}-name">`,
    `<header>${verdictBadge(report)}<h2 id="${id}-name">${shownName(report.artwork.path)}</h2>${work ? `<p class="work">${shown(work)}</p>` : ''}</header>`,
    figures(report, view, found, id),
    '<div class="told">',
    reason(report),
    findings(found, checks, explained),
    notChecked(report),
    report.status === 'unreadable' ? '' : sizes(report, view),
    file(report),
    cost(report),
    passed(report, checks),
    '</div></article>',
  ].join('\n');
}

function figures(report: ArtworkReport, view: PieceView, found: readonly Found[], id: string): string {
  const placed = found.filter(({ finding }) => finding.place).length;
  const count = placed === 1 ? '1 finding' : `${placed} findings`;
  const bare =
    report.status === 'unreadable' ? 'The bare blank: the artwork cannot be read' : 'The bare blank';
  const what = view.art ? `The art on its blank, ${placed > 0 ? `${count} marked` : 'nothing marked'}` : bare;
  const strip = view.lines.outline.kind === 'rect' && report.development ? ', its paper laid flat' : '';
  const proof = view.proof && {
    markup: proofFigure(view, view.proof, 'Proof: how the pressed blank will look'),
    caption: view.proof.onBlank
      ? 'Proof: how it will look, pressed'
      : 'Proof: how it will look, pressed, from four sides and on its flat paper',
  };
  return [
    `<div class="figures ${view.art === null ? 'bare' : view.proof?.onBlank === false ? 'round' : 'flat'}">`,
    `<figure>${artFigure(view, found, id, what)}<figcaption>${shown(what)}${strip}</figcaption></figure>`,
    proof ? `<figure>${proof.markup}<figcaption>${proof.caption}</figcaption></figure>` : '',
    '</div>',
  ].join('');
}

function reason({ status, error, artwork }: ArtworkReport): string {
  if (status !== 'unreadable' || !error) return '';
  const others = artwork.insteadOf ? `<p>Instead of ${shown(tellOthers(artwork))}</p>` : '';
  return `<p class="reason">${shown(error.message)} <span class="origin">(${shown(error.code)})</span></p><p>Nothing of it was checked.</p>${others}`;
}

function findings(
  found: readonly Found[],
  checks: readonly CheckDefinition[],
  explained: ReadonlySet<string>,
): string {
  if (found.length === 0) return '';
  const items = found.map((entry) => {
    const { finding, check } = entry;
    const limit = finding.expected ? `, limit set by ${finding.expected.from}` : '';
    return [
      `<li class="${finding.severity}"><p><strong class="label">${LABELS[finding.severity]}</strong> ${keepOptions(shown(phraseFinding(check, finding, checks)))}</p>`,
      `<p class="origin">${placeInWords(entry)}${nameMarkup(entry, explained)}${shown(limit)}</p></li>`,
    ].join('');
  });
  return `<h3>Findings</h3><ol class="findings">${items.join('')}</ol>`;
}

function nameMarkup(entry: Found, explained: ReadonlySet<string>): string {
  const name = shown(nameOf(entry));
  return explained.has(entry.check) ? `<a href="#${explanationId(entry.check)}">${name}</a>` : name;
}

function placeInWords({ finding: { place } }: Found): string {
  if (!place) return 'No place of its own. ';
  const { x, y, width, height } = place.mm;
  return `${shown(`${formatSize(width, height)}, from the left ${formatLength(x)}, from the top ${formatLength(y)}`)}. `;
}

function notChecked({ outcomes }: ArtworkReport): string {
  const items = listNotChecked(outcomes);
  if (items.length === 0) return '';
  return `<section class="unknown"><h3>Not checked</h3><ul>${items.map(({ text }) => `<li>${shown(text)}</li>`).join('')}</ul></section>`;
}

function sizes(report: ArtworkReport, { lines }: PieceView): string {
  const rows = [
    ...subjectRows(report),
    ['Safe line', `${formatLength(lines.safeMm)} inside the edge`] as const,
    ['Bleed line', `${formatLength(lines.bleedMm)} outside the edge`] as const,
  ];
  return `<h3>Sizes</h3>${list(rows)}`;
}

function cost({ cost }: ArtworkReport): string {
  return cost ? `<h3>Cost, in the currency of your settings</h3>${list(costRows(cost))}` : '';
}

function list(rows: readonly (readonly [label: string, text: string])[]): string {
  return `<dl>${rows.map(([label, text]) => `<div><dt>${shown(label)}</dt><dd>${shown(text)}</dd></div>`).join('')}</dl>`;
}

function file(report: ArtworkReport): string {
  if (report.status === 'unreadable') return '';
  const { output, plan } = report;
  const way = plan.length > 0 ? `<p>Plan: ${shown(tellPlan(plan))}</p>` : '';
  if (!output)
    return `<h3>Print-ready file</h3><p>Not written: ${shown(tellWhyNotWritten(report))}</p>${way}`;
  const size = `${formatSize(output.widthMm, output.heightMm)}, ${output.widthPx} x ${output.heightPx} px at ${output.ppi} ppi`;
  const advice = tellPrinting(output, report).map((text) => `<li>${shown(text)}</li>`);
  return `<h3>Print-ready file</h3><p class="path">${shownName(output.path)}</p><p>${shown(size)}</p>${way}<h3>How to print it</h3><ul>${advice.join('')}</ul>`;
}

function passed({ outcomes }: ArtworkReport, checks: readonly CheckDefinition[]): string {
  const names = outcomes.filter(({ status }) => status === 'passed').map(({ check }) => check);
  if (names.length === 0) return '';
  const titles = names.map((name) => checks.find(({ id }) => id === name)?.title ?? name);
  return `<details><summary>Passed: ${names.length === 1 ? '1 check' : `${names.length} checks`}</summary><ul>${titles.map((title) => `<li>${shown(title)}</li>`).join('')}</ul></details>`;
}

/** Browsers break a line at any hyphen: an option is copied whole. */
function keepOptions(markup: string): string {
  return markup.replace(/--[a-z][a-z-]*/g, '<span class="option">$&</span>');
}
