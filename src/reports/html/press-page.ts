import type { PressCard } from '../../catalogue/press-card.ts';
import type { OwnSettings } from '../../ledger/best-settings.ts';
import { bodyInWords } from '../body-words.ts';
import { ownSettingsLines } from '../own-settings-text.ts';
import { pieceRows } from '../piece-card.ts';
import { afterRows, beforeRows, type Row, rangeRows, sourceLines, timesInWords } from '../press-card-rows.ts';
import { startInWords } from '../press-words.ts';
import { FIGURE_STYLE } from './figure-style.ts';
import { layerStack } from './layer-stack.ts';
import { shown } from './markup.ts';
import { renderPage } from './page-shell.ts';
import { BASE_STYLE } from './page-style.ts';
import type { PagePiece } from './piece-article.ts';
import { artFigure } from './piece-figures.ts';

const STYLE = `${BASE_STYLE}${FIGURE_STYLE}
main{columns:24rem 2;column-gap:2rem}
section{break-inside:avoid;margin-bottom:1rem}
.start{font-size:1.25rem;font-weight:700;border:3px solid var(--text);padding:.5rem .75rem}
.caution{border:2px solid var(--stop);padding:.25rem .75rem .5rem}
.stack{padding-left:2.2rem}
.stack li{border:1px solid var(--text);padding:.3rem .6rem;margin-top:-1px}
.stack .transfer{border-width:3px;font-weight:700}
.stack .blank{background:var(--void);border-width:3px;font-weight:700}
.standing{font-weight:700}
.this-piece .figure{max-height:16rem;print-color-adjust:exact;-webkit-print-color-adjust:exact}
@media print{main{columns:2}.caution{break-inside:auto}.start{font-size:12pt;padding:.3rem .5rem}
body{font-size:8.5pt;line-height:1.35}h1{font-size:14pt}h2{font-size:10.5pt}
section{margin-bottom:.5rem}dt{flex-basis:5rem}footer{font-size:8pt}dl div{padding:.1rem 0}.stack li{padding:.15rem .5rem}
.this-piece .figure{max-height:48mm}}
`;

/**
 * The press card as a page to print and lay beside the press: the piece where one is given, the maker's own best settings first where a ledger knows
 * them, starting point, ranges, layers drawn in their order, steps, cautions, and who has the last word.
 */
export function renderPressPage(
  card: PressCard,
  own: OwnSettings | null = null,
  piece: PagePiece | null = null,
): string {
  const { blank, mirrored, recipe, alternatives } = card;
  const paper = mirrored
    ? 'Print the paper MIRRORED: the dye lies on the face that is looked at (first surface).'
    : 'Print the paper NOT mirrored: the dye lies on the back and is seen through the body (second surface).';
  const others = alternatives.map(
    (one) => `${one.recipe.name} (${one.recipe.id}): start with ${startInWords(one)}; ${timesInWords(one)}.`,
  );
  const body = [
    `<header><h1>${shown(blank.name)}</h1><p>${shown(`${blank.id}: ${bodyInWords(blank)}.`)}</p><p>${paper}</p></header>`,
    '<main>',
    piece ? pieceSection(piece) : '',
    ownSection(own),
    ...(recipe
      ? [
          `<section><h2>Start with</h2><p class="start">${shown(startInWords(recipe))}</p><p>${shown(`Recipe ${recipe.recipe.id}: ${recipe.recipe.name}.`)}</p></section>`,
          rowsSection('Ranges', rangeRows(recipe, card.notes)),
          rowsSection('Before', beforeRows(card, recipe.recipe)),
          `<section><h2>Layers, ${recipe.layerOrder === 'bottom-to-top' ? 'drawn as they lie, 1 at the bottom' : 'from the body outwards'}</h2>${layerStack(recipe.recipe.layers, recipe.layerOrder)}</section>`,
          rowsSection('After', afterRows(recipe.recipe)),
          listSection(
            'Mind',
            [blank.note, recipe.recipe.notes].filter((note) => note !== undefined),
          ),
          listSection('Another way', others),
        ]
      : [listSection('The record names no recipe; choose by the material and the maker’s sheet', others)]),
    cautionSection(card, 'pressing', 'Cautions at the press'),
    cautionSection(card, 'finished', 'Cautions about the finished piece'),
    listSection(
      'Every press',
      card.rules.map(({ text }) => text),
    ),
    listSection('Where the values come from', sourceLines(card)),
    '</main>',
    `<footer><p class="standing">${shown(card.standing)}</p><p>${shown(card.notes.signalWords)}</p></footer>`,
  ].join('\n');
  return renderPage('press card', { title: `Press card: ${blank.name}`, style: STYLE, body });
}

/** The art on its blank as it will be looked at, and where it lies. */
function pieceSection({ report, view }: PagePiece): string {
  const figure = artFigure(view, [], 'piece', 'The art on its blank, seen from the front');
  return `<section class="this-piece"><h2>This piece, seen from the front</h2>${figure}${rowsMarkup(pieceRows(report))}</section>`;
}

function ownSection(own: OwnSettings | null): string {
  const [title, ...lines] = ownSettingsLines(own, { colour: false, width: 100 });
  if (title === undefined) return '';
  return `<section><h2>${shown(title)}</h2><p>${shown(lines.map((line) => line.trim()).join(' '))}</p></section>`;
}

function rowsSection(title: string, rows: readonly Row[]): string {
  return `<section><h2>${title}</h2>${rowsMarkup(rows)}</section>`;
}

function rowsMarkup(rows: readonly Row[]): string {
  const told = rows.map(
    ([label, text]) => `<div><dt>${shown(label || 'also')}</dt><dd>${shown(text)}</dd></div>`,
  );
  return `<dl>${told.join('')}</dl>`;
}

function listSection(title: string, texts: readonly string[]): string {
  if (texts.length === 0) return '';
  return `<section><h2>${title}</h2><ul>${texts.map((text) => `<li>${shown(text)}</li>`).join('')}</ul></section>`;
}

function cautionSection({ cautions }: PressCard, when: 'pressing' | 'finished', title: string): string {
  const items = cautions
    .filter((caution) => caution.when === when)
    .map(
      ({ signalWord, hazard, text, defersTo }) =>
        `<li><strong>${signalWord}, ${shown(hazard.toLowerCase())}</strong>: ${shown(text)} Last word: ${shown(defersTo)}.</li>`,
    );
  if (items.length === 0) return '';
  return `<section class="caution"><h2>${title}</h2><ul>${items.join('')}</ul></section>`;
}
