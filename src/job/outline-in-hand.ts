import { BlankcheckError } from '../blankcheck-error.ts';
import { flatPaperOf, isTapered } from '../catalogue/flat-size.ts';
import type { BlankRecord, HoleRecord, OutlineRecord, WrapRecord } from '../catalogue/records.ts';
import { formatSize } from '../geometry/length.ts';
import type { Shape } from '../geometry/shape.ts';
import type { TypedSize } from '../geometry/size.ts';
import type { Hole } from './job.ts';

/** Outline, edge and holes of the one blank in hand, in mm from the top left of its outline box. */
export interface OutlineInHand {
  readonly outline: Shape;
  readonly edge: Shape;
  readonly holes: readonly Hole[];
  readonly wholeWrap: boolean;
}

/**
 * The nominal outline of a record, or the measured one: hole positions scale with it, hole sizes, corner
 * radii and the inset of a smaller printable area stay.
 * @throws BlankcheckError `not-built-yet` for cones and measured wraps, `measured-does-not-fit` for a measured
 * size that cannot be this blank's, `bad-blank-record` for a record with neither outline nor wrap.
 */
export function findOutlineInHand(record: BlankRecord, measured?: TypedSize): OutlineInHand {
  if (record.wrap) return unrollCylinder(record.id, record.wrap, measured);
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
    wholeWrap: false,
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

function unrollCylinder(id: string, wrap: WrapRecord, measured?: TypedSize): OutlineInHand {
  if (isTapered(wrap)) {
    throw new BlankcheckError(
      'not-built-yet',
      `The blank ${id} is tapered (${wrap.topDiameterMm} mm above, ${wrap.bottomDiameterMm} mm below): a straight strip would not lie on it, and developing cones is not built yet.`,
    );
  }
  if (measured) {
    throw new BlankcheckError('not-built-yet', `--measured is not built yet for round bodies such as ${id}.`);
  }
  const { widthMm, heightMm } = flatPaperOf(wrap);
  const box = { x: 0, y: 0, width: widthMm, height: heightMm };
  const outline: Shape = { kind: 'rect', box };
  return { outline, edge: outline, holes: [], wholeWrap: wrap.wayRound === 'whole' };
}
