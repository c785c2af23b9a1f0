import { BlankcheckError } from '../blankcheck-error.ts';
import { listBlanks } from '../catalogue/catalogue.ts';
import { wayRoundOf } from '../catalogue/flat-size.ts';
import type { BlankRecord, WrapRecord } from '../catalogue/records.ts';
import { bandOfBody } from '../catalogue/round-band.ts';
import {
  type Development,
  type DevelopmentAsked,
  developBand,
  type RoundBand,
} from '../geometry/development.ts';
import { formatLength } from '../geometry/length.ts';
import type { MeasuredBody } from '../geometry/measured-body.ts';

/** The round body that will be pressed, and its flat paper. */
export interface WrapInHand {
  /** The printed band. */
  readonly band: RoundBand;
  readonly wayRound: 'whole' | 'part';
  /** Paper that lies on paper, at the wider end; 0 on a wrap that goes part of the way round. */
  readonly overlapMm: number;
  readonly clearTopMm: number;
  readonly clearBaseMm: number;
  readonly development: Development;
  /** A rectangle was asked for. */
  readonly asked: DevelopmentAsked;
}

/**
 * The body of a record, as measured where it was.
 * @throws BlankcheckError `bad-wrap` for measures that make no body or no paper, `measured-does-not-fit` for such as this
 * blank cannot have; each names the likely mistake.
 */
export function findWrapInHand(
  record: BlankRecord & { readonly wrap: WrapRecord },
  measured: MeasuredBody | undefined,
  asked: DevelopmentAsked = 'auto',
): WrapInHand {
  const { wrap } = record;
  const real: WrapRecord = {
    ...wrap,
    topDiameterMm: measured?.topDiameterMm ?? wrap.topDiameterMm,
    bottomDiameterMm: measured?.bottomDiameterMm ?? bottomOf(wrap, measured),
    printHeightMm: measured?.heightMm ?? wrap.printHeightMm,
  };
  askAboutCircumference(record, real, measured !== undefined);
  checkHeight(record, real);
  const band = bandOfBody(real);
  return {
    band,
    wayRound: wrap.wayRound,
    overlapMm: wrap.wayRound === 'whole' ? (wrap.overlapMm ?? 0) : 0,
    clearTopMm: wrap.clearTopMm,
    clearBaseMm: wrap.clearBaseMm,
    development: developBand(band, wayRoundOf(real), asked),
    asked,
  };
}

/** A body that the record has as straight was measured once: it is as wide below. */
function bottomOf(wrap: WrapRecord, measured: MeasuredBody | undefined): number {
  const straight = wrap.topDiameterMm === wrap.bottomDiameterMm;
  return straight ? (measured?.topDiameterMm ?? wrap.bottomDiameterMm) : wrap.bottomDiameterMm;
}

function checkHeight(
  { id }: BlankRecord,
  { printHeightMm, bodyHeightMm, clearTopMm, clearBaseMm }: WrapRecord,
) {
  const most = bodyHeightMm - clearTopMm - clearBaseMm;
  if (printHeightMm <= most + 1e-9) return;
  throw new BlankcheckError(
    'measured-does-not-fit',
    `Expected a print height of at most ${formatLength(most)} for ${id}: its body is ${formatLength(bodyHeightMm)} high, and ${formatLength(clearTopMm)} above and ${formatLength(clearBaseMm)} below stay clear. Received ${formatLength(printHeightMm)}: measure the straight side only.`,
  );
}

/** More than this times the widest body of its family is asked about (own choice, between 1 and pi). */
const TOO_WIDE = 1.8;

/** A strip round a body is pi times its diameter: the two are mixed up easily, either way. */
function askAboutCircumference(record: BlankRecord, real: WrapRecord, measured: boolean): void {
  const wraps = listBlanks().filter(({ wrap }) => wrap);
  const kin = wraps.filter(({ family }) => family === record.family);
  const diameters = (kin.length > 0 ? kin : wraps).flatMap(({ wrap }) => [
    wrap!.topDiameterMm,
    wrap!.bottomDiameterMm,
  ]);
  const [widest, narrowest] = [Math.max(...diameters), Math.min(...diameters)];
  for (const [end, mm] of [
    ['top', real.topDiameterMm],
    ['bottom', real.bottomDiameterMm],
  ] as const) {
    if (mm > TOO_WIDE * widest)
      throw new BlankcheckError(
        'measured-does-not-fit',
        `The ${end} diameter of ${formatLength(mm)} is far above the ${formatLength(widest)} of the widest body of its kind. If it is the way round, its diameter is ${formatLength(mm / Math.PI)}: write it as ${end}-strip:${round(mm)}mm.`,
      );
    if (measured && mm * TOO_WIDE < narrowest)
      throw new BlankcheckError(
        'measured-does-not-fit',
        `The ${end} diameter of ${formatLength(mm)} is far below the ${formatLength(narrowest)} of the narrowest body of its kind. If a strip of ${formatLength(mm * Math.PI)} was meant, that is its diameter already: write it as ${end}:${round(mm * Math.PI)}mm.`,
      );
  }
}

function round(mm: number): number {
  return Number(mm.toFixed(1));
}
