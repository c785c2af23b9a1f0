import { BlankcheckError } from '../blankcheck-error.ts';
import { developWrap } from '../catalogue/flat-size.ts';
import type { BlankRecord, FamilyRecord } from '../catalogue/records.ts';
import type { InkColour } from '../geometry/drawing.ts';
import type { BlankInHand, Limit } from './job.ts';
import type { JobRequest } from './job-request.ts';
import { findOutlineInHand } from './outline-in-hand.ts';
import { checkPpi, DEFAULT_PPI } from './print-resolution.ts';

/**
 * The blank in hand: the record, its family's defaults, the measured size and the maker's options, with each
 * limit naming the record or option it came from.
 * @throws BlankcheckError `unknown-blank` without a record, `ppi-out-of-range`, and as findOutlineInHand.
 */
export function resolveBlank(request: JobRequest, family: FamilyRecord): BlankInHand {
  const record = request.blank;
  if (typeof record !== 'object' || record === null)
    throw new BlankcheckError(
      'unknown-blank',
      `Expected the record of a blank (as findBlank or blankFromSize gives it), received ${String(record)}.`,
    );
  const { outline, edge, holes, wrap } = findOutlineInHand(record, request.measured, request.development);
  const ofFamily = (value: number): Limit => ({ value, from: `family:${family.id}` });
  return {
    id: record.id,
    name: record.name,
    nominalMm: request.measured ? nominalOf(record) : null,
    outline,
    edge,
    holes,
    surface: request.surface ?? record.surface,
    bleed: firstKnown(request.bleedMm, '--bleed', record, record.bleedMm) ?? ofFamily(family.bleedMm),
    safe: firstKnown(request.safeMm, '--safe', record, record.safeMm) ?? ofFamily(family.safeMm),
    bevel: record.bevelMm === undefined ? null : { value: record.bevelMm, from: `blank:${record.id}` },
    wrap,
    safeSides: wrap?.wayRound === 'whole' ? 'top-and-bottom' : 'all',
    resolution: {
      good: ofFamily(family.resolutionPpi.good),
      acceptable: ofFamily(family.resolutionPpi.acceptable),
      stopBelow: ofFamily(family.resolutionPpi.stopBelow),
    },
    smallestStroke: findSmallestStroke(record, family),
    viewDistanceMm: family.viewDistanceMm,
    whiteBase: record.baseColour === undefined,
    baseColour: parseHex(record.baseColour ?? '#ffffff'),
    ppi: checkPpi(request.ppi ?? request.printer?.ppi ?? record.ppi ?? DEFAULT_PPI),
  };
}

/** The outline box of a record, or the strip of its flat paper. */
function nominalOf({ outline, wrap }: BlankRecord): BlankInHand['nominalMm'] {
  if (outline) return { width: outline.widthMm, height: outline.heightMm };
  if (!wrap) return null;
  const { widthMm, heightMm } = developWrap(wrap).strip;
  return { width: widthMm, height: heightMm };
}

function findSmallestStroke(record: BlankRecord, family: FamilyRecord): BlankInHand['smallestStroke'] {
  const stroke = record.smallestStrokeMm ?? family.smallestStrokeMm;
  if (!stroke) return null;
  const from = record.smallestStrokeMm ? `blank:${record.id}` : `family:${family.id}`;
  return { positive: { value: stroke.positive, from }, reversed: { value: stroke.reversed, from } };
}

/** `#rrggbb`, as the schema of blanks has it. */
function parseHex(colour: string): InkColour {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)) as [
    number,
    number,
    number,
  ];
  return { r, g, b };
}

function firstKnown(
  asked: number | undefined,
  option: string,
  record: BlankRecord,
  own: number | undefined,
): Limit | null {
  if (asked !== undefined) return { value: asked, from: `option:${option}` };
  if (own !== undefined) return { value: own, from: `blank:${record.id}` };
  return null;
}
