import { Buffer } from 'node:buffer';
import type { InkColour } from '../../geometry/drawing.ts';
import { growBox, type RectMm } from '../../geometry/rectangle.ts';
import type { Found } from '../list-found.ts';
import { badgeMarkup, type Numeral, textNumeral } from './badge.ts';
import { decimal, shown } from './markup.ts';
import type { PieceView, ViewedPicture } from './piece-view.ts';
import { placeBadges } from './place-badges.ts';
import { boxAttributes, rectMarkup, shapeMarkup } from './shape-markup.ts';

/** Shares of the longer side of what is shown (own choice): room round it, a badge, a pair of stripes. */
const [MARGIN, BADGE, STRIPES] = [0.075, 0.065, 0.02];
/** How far the points of a diamond and its rim reach beyond its square, in squares. */
const POINT = 0.1;

/** What a figure shows: the blank with its bleed, and room for badges. */
export function frameOf({ lines }: PieceView): RectMm {
  const boxes = [lines.outline.box, lines.bleed.box];
  const left = Math.min(...boxes.map(({ x }) => x));
  const top = Math.min(...boxes.map(({ y }) => y));
  const right = Math.max(...boxes.map(({ x, width }) => x + width));
  const bottom = Math.max(...boxes.map(({ y, height }) => y + height));
  const box = { x: left, y: top, width: right - left, height: bottom - top };
  return growBox(box, MARGIN * longerSide(box));
}

function longerSide({ width, height }: RectMm): number {
  return Math.max(width, height);
}

/** The picture of a contact sheet: it shows what the figure of the piece holds, once more. */
export function thumbnail(view: PieceView, id: string): string {
  return `<svg class="thumb" viewBox="${viewBox(frameOf(view))}" aria-hidden="true"><use href="#${id}-art"/></svg>`;
}

/** The art on its blank with its lines, and every finding that has a place, numbered as in the list. */
export function artFigure(view: PieceView, found: readonly Found[], id: string, label: string): string {
  const frame = frameOf(view);
  return [
    `<svg class="figure art" id="${id}-figure" role="img" aria-label="${shown(label)}" viewBox="${viewBox(frame)}">`,
    `<g id="${id}-art">${artMarkup(view)}</g>`,
    maskedStripes(view.outOfGamut, 'gamut', `${id}-gamut`, frame),
    maskedStripes(view.dark, 'dark', `${id}-dark`, frame),
    linesMarkup(view),
    findingsMarkup(found, frame, textNumeral),
    '</svg>',
  ].join('');
}

/** The bare blank, the art on it, its holes through both. */
export function artMarkup({ lines, baseColour, art }: PieceView): string {
  return [
    shapeMarkup(lines.outline, `fill="${hex(baseColour)}"`),
    art ? imageMarkup(art) : '',
    ...lines.holes.map((hole) => shapeMarkup(hole, 'class="hole"')),
    shapeMarkup(lines.outline, 'class="outline"'),
  ].join('');
}

/** How the pressed blank will look, beside the art and to its scale; of a round body its sides. */
export function proofFigure(view: PieceView, proof: NonNullable<PieceView['proof']>, label: string): string {
  const frame = proof.onBlank ? frameOf(view) : proof.boxMm;
  return `<svg class="figure proof" role="img" aria-label="${shown(label)}" viewBox="${viewBox(frame)}">${imageMarkup(proof)}</svg>`;
}

export function linesMarkup({ lines: { edge, safe, bleed, outline } }: PieceView): string {
  const lines = [
    ...(edge ? [twice(shapeMarkup(edge, 'class="edge"'))] : []),
    ...(safe ? [twice(shapeMarkup(safe, 'class="safe"'))] : []),
    twice(shapeMarkup(bleed, 'class="bleed"')),
    twice(shapeMarkup(outline, 'class="outline"')),
  ];
  return `<g class="lines">${lines.join('')}</g>`;
}

/** A light line under a dark one: one of the two is seen on any art. */
function twice(element: string): string {
  return `${element.replace('class="', 'class="under ')}${element}`;
}

/** Their boxes and their badges, numbered as in the list; a place that is none is passed over. */
export function findingsMarkup(found: readonly Found[], frame: RectMm, numeral: Numeral): string {
  const placed = found.flatMap(({ finding }, index) =>
    finding.place
      ? [{ number: index + 1, severity: finding.severity, boxMm: within(finding.place.mm, frame) }]
      : [],
  );
  const badge = BADGE * longerSide(frame);
  const badges = placeBadges(placed, growBox(frame, -POINT * badge), badge);
  const boxes = placed.map(({ number, severity, boxMm }) =>
    twice(rectMarkup(boxMm, 0, `class="found ${severity}" data-finding="${number}"`)),
  );
  const numbers = badges.map(({ number, boxMm }, index) =>
    badgeMarkup(number, boxMm, placed[index]!.severity, numeral),
  );
  return `<g class="findings">${boxes.join('')}${numbers.join('')}</g>`;
}

/** A place may reach far beyond what is shown; a box that lies on a line is given a width. */
function within({ x, y, width, height }: RectMm, frame: RectMm): RectMm {
  const left = Math.min(Math.max(x, frame.x), frame.x + frame.width);
  const top = Math.min(Math.max(y, frame.y), frame.y + frame.height);
  const right = Math.min(x + width, frame.x + frame.width);
  const bottom = Math.min(y + height, frame.y + frame.height);
  return { x: left, y: top, width: Math.max(0, right - left), height: Math.max(0, bottom - top) };
}

/** Stripes where a mask is white: rising for colours, falling for darkness, each in two tones. */
function maskedStripes(
  mask: ViewedPicture | null,
  name: 'gamut' | 'dark',
  id: string,
  frame: RectMm,
): string {
  if (mask === null) return '';
  const side = decimal(STRIPES * longerSide(frame));
  const angle = name === 'gamut' ? 45 : -45;
  return [
    `<g class="${name}">`,
    `<pattern id="${id}-stripes" width="${side}" height="${side}" patternUnits="userSpaceOnUse" patternTransform="rotate(${angle})">`,
    `<rect class="one" width="${side}" height="${side}"/><rect class="other" width="${decimal(Number(side) / 2)}" height="${side}"/></pattern>`,
    `<mask id="${id}" maskUnits="userSpaceOnUse" ${boxAttributes(mask.boxMm)}>${imageMarkup(mask)}</mask>`,
    rectMarkup(mask.boxMm, 0, `fill="url(#${id}-stripes)" mask="url(#${id})"`),
    '</g>',
  ].join('');
}

function imageMarkup({ mediaType, bytes, boxMm }: ViewedPicture): string {
  const data = Buffer.from(bytes).toString('base64');
  return `<image ${boxAttributes(boxMm)} preserveAspectRatio="none" href="data:${mediaType};base64,${data}"/>`;
}

export function viewBox({ x, y, width, height }: RectMm): string {
  return [x, y, width, height].map(decimal).join(' ');
}

function hex({ r, g, b }: InkColour): string {
  return `#${[r, g, b].map((code) => code.toString(16).padStart(2, '0')).join('')}`;
}
