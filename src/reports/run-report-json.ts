import type { CheckDefinition } from '../checks/define-check.ts';
import { CHECKS } from '../checks/index.ts';
import type { PieceCost } from '../costing/cost-of-piece.ts';
import { outcomeJsonOf } from './outcome-json.ts';
import { pagePlanJsonOf } from './page-plan-json.ts';
import type {
  ArtworkReport,
  DevelopmentReport,
  MendReport,
  PrintReadyOutput,
  ProofOutput,
  RunReport,
  Summary,
} from './report.ts';
import { roundNumbers, roundRect } from './round-numbers.ts';
import { sheetsJsonOf } from './sheets-json.ts';
import { escapeJsonText } from './visible-text.ts';

/**
 * The report of a run as one JSON document (RFC 8259), with a newline at its end. Fields and their order are fixed,
 * anything else an object may carry is left out, every finding gets its `message`, and numbers are rounded so that
 * none crosses a limit. Characters that could steer a terminal are written as \u escapes: the values stay the same.
 * @see seeds/schema/report.schema.json, which every document fulfils.
 */
export function toRunReportJson(run: RunReport, checks: readonly CheckDefinition[] = CHECKS): string {
  const { artworks, ready, look, stop, unreadable, passedOver } = run.summary;
  const document = {
    schemaVersion: run.schemaVersion,
    program: { name: run.program.name, version: run.program.version },
    summary: { artworks, ready, look, stop, unreadable, passedOver },
    results: run.results.map((result) => resultOf(result, checks)),
    ...(run.sheets &&
      sheetsJsonOf({ sheets: run.sheets, leftOut: run.leftOut ?? [], apart: run.apart ?? [] })),
  };
  return `${escapeJsonText(JSON.stringify(document, null, 2))}\n`;
}

/** One result as a line of JSON, as it stands in the report of the run, with a newline at its end. */
export function toResultJsonLine(report: ArtworkReport, checks: readonly CheckDefinition[] = CHECKS): string {
  return `${escapeJsonText(JSON.stringify(resultOf(report, checks)))}\n`;
}

/** The last line of a run told line by line. */
export function toSummaryJsonLine({ artworks, ready, look, stop, unreadable, passedOver }: Summary): string {
  return `${JSON.stringify({ summary: { artworks, ready, look, stop, unreadable, passedOver } })}\n`;
}

function resultOf(report: ArtworkReport, checks: readonly CheckDefinition[]): object {
  const { artwork, error, blank, effectivePpi, output, proof, proofError } = report;
  return {
    artwork: {
      path: artwork.path,
      sha256: artwork.sha256,
      format: artwork.format,
      widthPx: artwork.widthPx,
      heightPx: artwork.heightPx,
      statedPpi: artwork.statedPpi && pairOf(artwork.statedPpi),
      ...(artwork.insteadOf && { insteadOf: artwork.insteadOf }),
      ...(artwork.unreadableBeside && { unreadableBeside: artwork.unreadableBeside }),
    },
    status: report.status,
    error: error && { code: error.code, message: error.message },
    contentBoxPx: report.contentBoxPx && roundRect(report.contentBoxPx),
    blank: roundNumbers({
      id: blank.id,
      widthMm: blank.widthMm,
      heightMm: blank.heightMm,
      surface: blank.surface,
      ...(blank.printable && { printable: blank.printable }),
    }),
    ...(report.printer && { printer: printerOf(report.printer) }),
    ...(report.colours && { colours: report.colours }),
    placementMm: report.placementMm && roundRect(report.placementMm),
    ...(report.copiesMm && { copiesMm: roundNumbers(report.copiesMm) }),
    ...(report.development && { development: developmentOf(report.development) }),
    inkedMm: report.inkedMm && roundRect(report.inkedMm),
    effectivePpi: effectivePpi && pairOf(effectivePpi),
    outcomes: report.outcomes.map((outcome) => outcomeJsonOf(outcome, checks)),
    mends: report.mends.map(mendOf),
    plan: roundNumbers(report.plan),
    ...(report.sheet && { sheet: pagePlanJsonOf(report.sheet) }),
    ...(report.cost && { cost: costJsonOf(report.cost) }),
    output: output && outputOf(output),
    proof: proof && proofOf(proof),
    proofError: proofError && { code: proofError.code, message: proofError.message },
    ...(report.picture && { picture: pictureOf(report.picture) }),
  };
}

function costJsonOf({ perGoodPiece, parts, scrapRate, ink, leftOut }: PieceCost): object {
  const { coverage, areaMm2, ml } = ink;
  return roundNumbers({
    perGoodPiece,
    parts: parts.map(({ part, amount }) => ({ part, amount })),
    scrapRate,
    ink: { coverage, areaMm2, ml },
    leftOut,
  });
}

function developmentOf({ kind, rectangleErrorMm: { rim, foot }, ...paper }: DevelopmentReport): object {
  const { outerRadiusMm, innerRadiusMm, angleDeg, sagittaMm, widthMm, heightMm } = paper;
  const lengths = { outerRadiusMm, innerRadiusMm, angleDeg, sagittaMm };
  return roundNumbers({ kind, ...lengths, rectangleErrorMm: { rim, foot }, widthMm, heightMm });
}

function mendOf({ inventedMm, ...report }: MendReport): object {
  const { mend, areaMm2, pixels, largestDeltaE00, largestAlpha, mended } = report;
  const invented = inventedMm === undefined ? {} : { inventedMm };
  return roundNumbers({ mend, areaMm2, pixels, largestDeltaE00, largestAlpha, mended, ...invented });
}

function outputOf({ path, widthPx, heightPx, widthMm, heightMm, ppi, mirrored }: PrintReadyOutput): object {
  return roundNumbers({ path, widthPx, heightPx, widthMm, heightMm, ppi, mirrored });
}

function printerOf({
  name,
  driverMirrors,
  scaleCorrection: { scan, feed },
}: NonNullable<ArtworkReport['printer']>): object {
  return { name, driverMirrors, scaleCorrection: { scan, feed } };
}

function proofOf({ path, widthPx, heightPx, ppi, marked }: ProofOutput): object {
  return roundNumbers({ path, widthPx, heightPx, ppi, marked });
}

function pictureOf(picture: NonNullable<ArtworkReport['picture']>): object {
  if ('error' in picture) return { error: { code: picture.error.code, message: picture.error.message } };
  return { path: picture.path, widthPx: picture.widthPx, heightPx: picture.heightPx };
}

function pairOf({ x, y }: { readonly x: number; readonly y: number }): object {
  return roundNumbers({ x, y });
}
