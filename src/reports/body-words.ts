import { findFlatSize, isTapered } from '../catalogue/flat-size.ts';
import type { BlankRecord, OutlineRecord, WrapRecord } from '../catalogue/records.ts';
import { formatLength, formatMillimetres, formatSize, MM_PER_INCH } from '../geometry/length.ts';

const SHAPES: Readonly<Record<OutlineRecord['shape'], string>> = {
  rect: 'square corners',
  'rounded-rect': 'rounded corners',
  circle: 'round',
  ellipse: 'oval',
  stadium: 'ends that are half circles',
  polygon: 'outline of its own',
};

/** Size for a list: outline box, flat paper of a straight body; `89/70 x 140 mm` are the diameters of a tapered one by its print height. */
export function sizeInWords(blank: BlankRecord): string {
  const size = findFlatSize(blank);
  if (size && !(blank.wrap && isTapered(blank.wrap))) return formatSize(size.widthMm, size.heightMm);
  if (!blank.wrap) return '';
  const { topDiameterMm, bottomDiameterMm, printHeightMm } = blank.wrap;
  const inches = [topDiameterMm, bottomDiameterMm, printHeightMm].map((mm) =>
    Number((mm / MM_PER_INCH).toFixed(2)),
  );
  return `${topDiameterMm}/${bottomDiameterMm} x ${printHeightMm} mm (${inches[0]}/${inches[1]} x ${inches[2]} in)`;
}

/** What the piece is, for a card: size, shape, thickness, printable faces. */
export function bodyInWords(blank: BlankRecord): string {
  const { outline, wrap, printable, thicknessMm, sides } = blank;
  return [
    ...(wrap ? roundInWords(blank, wrap) : [sizeInWords(blank)]),
    ...(outline ? [SHAPES[outline.shape]] : []),
    ...(printable ? [`printable ${formatSize(printable.widthMm, printable.heightMm)} in the middle`] : []),
    ...(thicknessMm === undefined ? [] : [`${formatMillimetres(thicknessMm)} thick`]),
    ...(sides === 2 ? ['two printable faces'] : []),
  ].join(', ');
}

function roundInWords(blank: BlankRecord, wrap: WrapRecord): readonly string[] {
  if (isTapered(wrap)) return [taperInWords(wrap), arcInWords(blank)];
  return [
    `body ${formatLength(wrap.topDiameterMm)} across`,
    `flat paper ${sizeInWords(blank)}`,
    wrap.wayRound === 'whole' ? overlapInWords(wrap) : 'part of the way round',
  ];
}

function arcInWords(blank: BlankRecord): string {
  const size = findFlatSize(blank);
  return `an arc of paper${size ? ` in a box of ${formatSize(size.widthMm, size.heightMm)}` : ', no rectangle'}`;
}

function overlapInWords({ overlapMm }: WrapRecord): string {
  return `the whole way round${overlapMm ? ` with ${formatMillimetres(overlapMm)} of overlap` : ''}`;
}

function taperInWords(wrap: WrapRecord): string {
  const ends = `${formatLength(wrap.topDiameterMm)} across above, ${formatLength(wrap.bottomDiameterMm)} below`;
  return `tapered body ${ends}, print height ${formatLength(wrap.printHeightMm)}`;
}
