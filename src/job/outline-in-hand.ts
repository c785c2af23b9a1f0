import { BlankcheckError } from '../blankcheck-error.ts';
import type { BlankRecord, HoleRecord, OutlineRecord } from '../catalogue/records.ts';
import type { DevelopmentAsked } from '../geometry/development.ts';
import { formatSize } from '../geometry/length.ts';
import type { MeasuredBody } from '../geometry/measured-body.ts';
import type { Shape } from '../geometry/shape.ts';
import type { TypedSize } from '../geometry/size.ts';
import type { Hole } from './job.ts';
import { findWrapInHand, type WrapInHand } from './wrap-in-hand.ts';

/** Outline, edge and holes of the one blank in hand, in mm from the top left of its outline box. */
export interface OutlineInHand {
  readonly outline: Shape;
  readonly edge: Shape;
  readonly holes: readonly Hole[];
  /** null for flat blanks. The outline of a wrap is its strip: along the paper at mid height, by the slant. */
  readonly wrap: WrapInHand | null;
}

/**
 * The nominal outline of a record, or the measured one: hole positions scale with it, hole sizes, corner
 * radii and the inset of a smaller printable area stay.
 * @throws BlankcheckError `measured-does-not-fit` for a measured size that cannot be this blank's, `bad-wrap`,
 * `bad-blank-record` for a record with neither outline nor wrap.
 */
export function findOutlineInHand(
  record: BlankRecord,
  measured?: TypedSize | MeasuredBody,
  asked?: DevelopmentAsked,
): OutlineInHand {
  if (record.wrap) return unrollWrap(record, measured, asked);
  if (asked === 'rectangle')
    throw new BlankcheckError('bad-option', `--development is for round bodies, and ${record.id} is flat.`);
  if (measured?.kind === 'body')
    throw new BlankcheckError(
      'measured-does-not-fit',
      `Expected a size for --measured of ${record.id}, which is flat, such as 197x197mm; received the measures of a round body.`,
    );
  const nominal = record.outline;
  if (!nominal) {
    throw new BlankcheckError(
      'bad-blank-record',
      `Expected an outline or a wrap for the blank ${record.id}, found neither.`,
    );
  }
  const size = measured ?? nominal;
  if (measured?.kind === 'round' && nominal.shape !== 'circle' && nominal.shape !== 'ellipse') {
    throw new BlankcheckError(
      'measured-does-not-fit',
      `Expected two sides for --measured of ${record.id}, which is not round; received a diameter. Write it as ${nominal.widthMm}x${nominal.heightMm}mm.`,
    );
  }
  const outline = toShape(nominal, 0, 0, size.widthMm, size.heightMm);
  return {
    outline,
    edge: record.printable ? placePrintable(record.id, record.printable, nominal, size) : outline,
    holes: (record.holes ?? []).map((hole) =>
      placeHole(hole, size.widthMm / nominal.widthMm, size.heightMm / nominal.heightMm),
    ),
    wrap: null,
  };
}

function placePrintable(
  id: string,
  printable: OutlineRecord,
  nominal: OutlineRecord,
  size: { widthMm: number; heightMm: number },
): Shape {
  const insetX = (nominal.widthMm - printable.widthMm) / 2;
  const insetY = (nominal.heightMm - printable.heightMm) / 2;
  const widthMm = size.widthMm - 2 * insetX;
  const heightMm = size.heightMm - 2 * insetY;
  if (widthMm <= 0 || heightMm <= 0) {
    throw new BlankcheckError(
      'measured-does-not-fit',
      `Expected a measured size larger than the unprintable rim of ${id}, received ${formatSize(size.widthMm, size.heightMm)}: check the measurement.`,
    );
  }
  return toShape(printable, insetX, insetY, widthMm, heightMm);
}

function toShape(record: OutlineRecord, x: number, y: number, widthMm: number, heightMm: number): Shape {
  const box = { x, y, width: widthMm, height: heightMm };
  switch (record.shape) {
    case 'rounded-rect':
      return { kind: 'rounded-rect', box, cornerRadiusMm: record.cornerRadiusMm ?? 0 };
    case 'circle':
    case 'ellipse':
      return { kind: widthMm === heightMm ? 'circle' : 'ellipse', box };
    case 'polygon': {
      const scaleX = widthMm / record.widthMm;
      const scaleY = heightMm / record.heightMm;
      return {
        kind: 'polygon',
        box,
        pointsMm: (record.pointsMm ?? []).map(([px, py]) => [px * scaleX, py * scaleY] as const),
      };
    }
    default:
      return { kind: record.shape, box };
  }
}

function placeHole(hole: HoleRecord, scaleX: number, scaleY: number): Hole {
  const width = hole.shape === 'circle' ? hole.diameterMm : hole.widthMm;
  const height = hole.shape === 'circle' ? hole.diameterMm : hole.heightMm;
  const box = { x: hole.xMm * scaleX - width / 2, y: hole.yMm * scaleY - height / 2, width, height };
  return { use: hole.use, shape: { kind: hole.shape === 'circle' ? 'circle' : 'stadium', box } };
}

function unrollWrap(
  record: BlankRecord,
  measured?: TypedSize | MeasuredBody,
  asked?: DevelopmentAsked,
): OutlineInHand {
  if (measured && measured.kind !== 'body')
    throw new BlankcheckError(
      'measured-does-not-fit',
      `Expected the measures of a round body for --measured of ${record.id}, such as top:89mm,bottom:70mm,height:140mm, or strip:232mm,height:208mm (length of a paper strip that goes once round); received a flat size.`,
    );
  const wrap = findWrapInHand({ ...record, wrap: record.wrap! }, measured, asked);
  const { widthMm: width, heightMm: height } = wrap.development.strip;
  const outline: Shape = { kind: 'rect', box: { x: 0, y: 0, width, height } };
  return { outline, edge: outline, holes: [], wrap };
}
