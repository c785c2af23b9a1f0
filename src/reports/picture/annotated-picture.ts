import type { CheckDefinition } from '../../checks/define-check.ts';
import type { Severity } from '../../checks/finding.ts';
import { CHECKS } from '../../checks/index.ts';
import { formatSize } from '../../geometry/length.ts';
import { letter } from '../../lettering/letter.ts';
import { badgeMarkup, type Numeral } from '../html/badge.ts';
import { decimal } from '../html/markup.ts';
import type { PagePiece } from '../html/piece-article.ts';
import { artMarkup, findingsMarkup, frameOf, linesMarkup, viewBox } from '../html/piece-figures.ts';
import { VERDICT_SHAPES, VERDICT_TITLES, verdictOf } from '../html/verdict-badge.ts';
import { type Found, listFound } from '../list-found.ts';
import { phraseFinding } from '../phrase.ts';
import type { ArtworkReport } from '../report.ts';
import { tellResolution } from '../resolution-words.ts';
import { PICTURE_STYLE } from './picture-style.ts';
import { pathData, setLines } from './set-lines.ts';

/** As many pixels as most phones are wide; capitals that are read there without enlarging it (own choice). */
const PICTURE_WIDTH_PX = 1080;
const MARGIN = 40;
const WIDTH = PICTURE_WIDTH_PX - 2 * MARGIN;
const [TITLE, TEXT] = [30, 23];
/** A figure that is taller is drawn smaller: all of it is seen at once. */
const TALLEST_FIGURE = 1200;
const BADGE = 52;
/** More would be read in the report, not on a phone. */
const MOST_FINDINGS = 6;
/** A finding ends with what to do, so that all of it is to be read; longer ones than any that is known are cut. */
const MOST_LINES = 14;

/** A picture as markup: SVG 1.1 without text, fonts or anything from outside. */
export interface PictureMarkup {
  readonly widthPx: number;
  readonly heightPx: number;
  /** What stands within the root, whose viewBox is the picture in pixels. */
  readonly body: string;
}

/**
 * One artwork as a single picture: the verdict, the art on its blank with its lines and every finding's number in place, and
 * the first findings in words. All lettering is outlines. Same input, same markup.
 */
export function annotatePicture(
  { report, view }: PagePiece,
  checks: readonly CheckDefinition[] = CHECKS,
): PictureMarkup {
  const found = listFound(report.outcomes);
  const head = header(report);
  const frame = frameOf(view);
  const scale = Math.min(PICTURE_WIDTH_PX / frame.width, TALLEST_FIGURE / frame.height);
  const figureHeight = Math.ceil(frame.height * scale);
  const figure = [
    `<rect class="void" y="${head.bottom}" width="${PICTURE_WIDTH_PX}" height="${figureHeight}"/>`,
    `<svg y="${head.bottom}" width="${PICTURE_WIDTH_PX}" height="${figureHeight}" viewBox="${viewBox(frame)}">`,
    artMarkup(view),
    linesMarkup(view),
    findingsMarkup(found, frame, outlinedNumeral),
    '</svg>',
  ].join('');
  const told = legend({ report, view }, found, checks, head.bottom + figureHeight + MARGIN);
  const heightPx = Math.ceil(told.bottom + MARGIN / 2);
  const ground = `<rect class="ground" width="${PICTURE_WIDTH_PX}" height="${heightPx}"/>`;
  return {
    widthPx: PICTURE_WIDTH_PX,
    heightPx,
    body: `<style>${PICTURE_STYLE}</style>${ground}${head.markup}${figure}${told.markup}`,
  };
}

interface Part {
  readonly markup: string;
  readonly bottom: number;
}

function header(report: ArtworkReport): Part {
  const verdict = verdictOf(report);
  const icon = `<svg class="verdict ${verdict}" x="${MARGIN}" y="${MARGIN - 8}" width="46" height="46" viewBox="0 0 16 16">${VERDICT_SHAPES[verdict]}</svg>`;
  const words = line(VERDICT_TITLES[verdict], MARGIN, TITLE, `words ${verdict}`, 62);
  const name = line(report.artwork.path, words.bottom + 8, TEXT, 'text');
  const { blank, placementMm } = report;
  const resolution = tellResolution(report);
  const facts = [
    `${blank.id}, ${formatSize(blank.widthMm, blank.heightMm)}`,
    ...(placementMm ? [`art ${formatSize(placementMm.width, placementMm.height)}`] : []),
    ...(resolution === null ? [] : [resolution]),
  ].join('; ');
  const told = paragraph(facts, name.bottom, 'quiet', 0, 2);
  return { markup: [icon, words.markup, name.markup, told.markup].join(''), bottom: told.bottom + 16 };
}

/** Shortened in the middle where it is too long, so that both ends of a name are read. */
function line(text: string, y: number, capitals: number, kind: string, indent = 0): Part {
  const setting = { x: MARGIN + indent, y, capitals, width: WIDTH - indent, kind, mostLines: 1 };
  return setLines(text, setting);
}

function paragraph(text: string, y: number, kind: string, indent: number, mostLines: number): Part {
  return setLines(text, { x: MARGIN + indent, y, capitals: TEXT, width: WIDTH - indent, kind, mostLines });
}

const LABELS: Readonly<Record<Severity, string>> = { error: 'STOP', warning: 'LOOK', advice: 'NOTE' };

function legend(
  { report, view }: PagePiece,
  found: readonly Found[],
  checks: readonly CheckDefinition[],
  top: number,
): Part {
  const parts: string[] = [];
  let y = top;
  const add = ({ markup, bottom }: Part) => {
    parts.push(markup);
    y = bottom;
  };
  if (report.error) add(paragraph(report.error.message, y, 'text', 0, MOST_LINES));
  for (const [index, { check, finding }] of found.slice(0, MOST_FINDINGS).entries()) {
    const { severity } = finding;
    parts.push(badgeMarkup(index + 1, { x: MARGIN, y: y - 14, width: BADGE }, severity, outlinedNumeral));
    add(paragraph(LABELS[severity], y, `label ${severity}`, BADGE + 16, 1));
    add(paragraph(phraseFinding(check, finding, checks), y, 'text', BADGE + 16, MOST_LINES));
    y += 14;
  }
  const more = found.length - MOST_FINDINGS;
  if (more > 0) add(paragraph(`and ${more} more in the report`, y, 'quiet', BADGE + 16, 1));
  add(paragraph(closing(report, view.lines.edge !== null), y + 8, 'quiet', 0, MOST_LINES));
  return { markup: parts.join(''), bottom: y };
}

function closing({ status, outcomes }: ArtworkReport, hasField: boolean): string {
  if (status === 'unreadable') return 'The bare blank is shown. Nothing of the art was checked.';
  const skipped = outcomes.filter((outcome) => outcome.status === 'skipped' || outcome.status === 'broken');
  const unknown = skipped.length > 0 ? ` Not checked: ${skipped.map(({ check }) => check).join(', ')}.` : '';
  const field = hasField ? ' Dashes and dots: printable field.' : '';
  return `Whole line: the blank.${field} Dashes: safe line. Dots: bleed line.${unknown}`;
}

const outlinedNumeral: Numeral = (text, { x, y }, size) => {
  // Capitals of the face are 0.71 of its size.
  const capHeightMm = size * 0.71;
  const at = { x, y: y + capHeightMm / 2 };
  return `<path d="${pathData(letter(text, { capHeightMm, at, anchor: 'middle' }).path)}"/>`;
};

/** The whole markup, with its root as wide and high as the renderer is told. */
export function pictureSvg(
  { widthPx, heightPx, body }: PictureMarkup,
  lengthOf: (px: number) => number,
): string {
  const [width, height] = [widthPx, heightPx].map((px) => decimal(lengthOf(px)));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${widthPx} ${heightPx}">${body}</svg>`;
}
