export { looksLikeZip } from './archive/looks-like-zip.ts';
export { openZip, type ZipArchive, type ZipEntry } from './archive/open-zip.ts';
export { readZipEntries, type ZipItem } from './archive/read-zip.ts';
export { ZIP_LIMITS, type ZipLimits } from './archive/zip-limits.ts';
export { BlankcheckError, ERROR_KINDS, type ErrorCode, type ErrorKind } from './blankcheck-error.ts';
export {
  defaultFamily,
  findBlank,
  findFamily,
  findRecipe,
  listBlanks,
  listFamilies,
  listRecipes,
} from './catalogue/catalogue.ts';
export { type CommentedJson, parseCommentedJson } from './catalogue/commented-json.ts';
export { findFlatSize } from './catalogue/flat-size.ts';
export { findTooDeep, MAX_JSON_DEPTH } from './catalogue/json-depth.ts';
export { nearestBlankIds, nearestIds } from './catalogue/nearest-ids.ts';
export { type PressCard, pressCard } from './catalogue/press-card.ts';
export type { PrinterMargins, PrinterRecord } from './catalogue/printer-record.ts';
export { readBlankRecord } from './catalogue/read-blank-record.ts';
export { type ReadSheetJob, readSheetJob } from './catalogue/read-sheet-job.ts';
export type {
  BlankRecord,
  FamilyRecord,
  HoleRecord,
  OutlineRecord,
  Source,
  WrapRecord,
} from './catalogue/records.ts';
export { searchBlanks } from './catalogue/search-blanks.ts';
export { SEEDS_SHA256 } from './catalogue/seed-data.ts';
export type { JobPiece, SheetJob } from './catalogue/sheet-job-schema.ts';
export { turnOverBlank } from './catalogue/turn-over-blank.ts';
export {
  type CheckedArtwork,
  checkArtwork,
  conditionFor,
  judgePicture,
  type PicturedArtwork,
  type PlacedArtwork,
  type PrintRequest,
  pictureArtwork,
  placeArtwork,
} from './check-artwork.ts';
export type { CheckDefinition } from './checks/define-check.ts';
export type { Fact, Finding, Outcome, Quantity, Range, Severity, Unit } from './checks/finding.ts';
export { CHECKS } from './checks/index.ts';
export { type ComposeSheetOptions, composeSheet, encodeSheet, encodeSheetsAsPdf } from './compose-sheet.ts';
export { listConditionIds, loadCondition } from './conditions/load-condition.ts';
export type { PrinterConversion } from './conditions/printer-conversion.ts';
export type { PrintingCondition } from './conditions/printing-condition.ts';
export { COST_INPUTS, type CostInput, type CostInputs, readCostInputs } from './costing/cost-inputs.ts';
export { type CostPart, costOfPiece, type InkUse, type PieceCost } from './costing/cost-of-piece.ts';
export type { Artwork, ArtworkFormat, ArtworkProfile, StatedPpi, VectorFacts } from './formats/artwork.ts';
export { hasArtworkName } from './formats/artwork-name.ts';
export { findHeaderSize, type HeaderSize } from './formats/find-header-size.ts';
export type {
  Inspection,
  InspectionChange,
  InspectionVerdict,
} from './formats/inspection.ts';
export { LIMITS, type LimitName, type Limits, limitsWith } from './formats/limits.ts';
export { type PrintRecord, readPrintRecord } from './formats/print-record.ts';
export { sniffFormat } from './formats/sniff.ts';
export { type HashedStandIn, STAND_IN_BYTES, type StandIn } from './formats/stand-in.ts';
export type { Development, DevelopmentAsked } from './geometry/development.ts';
export {
  formatLength,
  formatSize,
  parseLength,
  parseNonNegativeLength,
  parsePositiveLength,
} from './geometry/length.ts';
export { looksLikeMeasuredBody, type MeasuredBody, parseMeasuredBody } from './geometry/measured-body.ts';
export type { PointMm, PointPx, RectMm, RectPx } from './geometry/rectangle.ts';
export type { Shape } from './geometry/shape.ts';
export { looksLikeSize, parseOffset, parseSize, type TypedSize } from './geometry/size.ts';
export {
  type InspectOptions,
  inspectPrintReady,
} from './inspect-print-ready.ts';
export { blankFromSize } from './job/blank-from-size.ts';
export type { BlankInHand, Hole, Job, Limit, Surface, Turn } from './job/job.ts';
export type { JobRequest } from './job/job-request.ts';
export { DEFAULT_PPI, MAX_PPI } from './job/print-resolution.ts';
export type { BlankSuit, SuitVerdict } from './job/suit-job.ts';
export type { WrapInHand } from './job/wrap-in-hand.ts';
export { type Hand, parseWrapPlacing, type WrapPlacing } from './job/wrap-places.ts';
export { type JudgedPiece, type JudgePieceOptions, judgePiece, type PrintedPiece } from './judge-piece.ts';
export {
  type LaidSheet,
  type LaidSheets,
  laySheets,
  laySheetsGivingWay,
  type SheetLayout,
  type SheetsToLay,
} from './lay-sheets.ts';
export { findBestSettings, type OwnSettings } from './ledger/best-settings.ts';
export { parseDwellS, parseTemperature, type Temperature } from './ledger/heat.ts';
export { type LedgerEntry, type PressedRecipe, type Pressing, writePressing } from './ledger/pressing.ts';
export { readDefects } from './ledger/read-defects.ts';
export { findPressingFaults, type Ledger, type LedgerFault, readLedger } from './ledger/read-ledger.ts';
export { searchPressings } from './ledger/search-pressings.ts';
export { DEFECTS, type Defect, PRESSURES, type Pressure } from './ledger/vocabulary.ts';
export { type Mended, type MendedArtwork, mendArtwork, reportMends } from './mend-artwork.ts';
export type { ExtendHow, MendContext, MendDefinition, MendedRaster } from './mends/define-mend.ts';
export { MENDS } from './mends/index.ts';
export { readMends } from './mends/read-mends.ts';
export { type AnnotatedPicture, picturePiece } from './picture-piece.ts';
export {
  type Preflight,
  type PreflightOptions,
  preflight,
} from './preflight.ts';
export type { Background, PrintPlan, Step } from './prepare/step.ts';
export {
  type PrepareOptions,
  prepareArtwork,
} from './prepare-artwork.ts';
export { choosePrintReadyFormat, type PrintReadyFormat } from './print-ready-format.ts';
export type { FitExplanation } from './printers/fit-explanations.ts';
export { judgeRulers, type MeasuredRulers, RULER_MM, type RulerVerdict } from './printers/judge-rulers.ts';
export { findPageLimits, type PageLimits } from './printers/page-limits.ts';
export type { Printer } from './printers/printer.ts';
export { readPrinter } from './printers/read-printer.ts';
export { storeCorrection } from './printers/store-correction.ts';
export type { Proof, ProofRequest } from './proof-artwork.ts';
export type { ColourModel, Raster } from './raster/raster.ts';
export type { Extents, Survey } from './raster/survey.ts';
export { surveyRaster } from './raster/survey-raster.ts';
export { type ReadOptions, readArtwork } from './read-artwork.ts';
export { badCondition, MAX_CONDITION_BYTES, readCondition } from './read-condition.ts';
export { readForPrint } from './read-for-print.ts';
export type { ArtworkSource } from './read-or-report.ts';
export { badPrinterProfile, type PrinterProfileOptions, readPrinterProfile } from './read-printer-profile.ts';
export { reportUnreadable, type UnreadableSource } from './report-artwork.ts';
export { renderBlankList } from './reports/blank-list-text.ts';
export { sizeInWords } from './reports/body-words.ts';
export { renderCalibration } from './reports/calibration-text.ts';
export { renderCheckTable } from './reports/check-table.ts';
export { renderFindingPage } from './reports/finding-page.ts';
export { pageHead } from './reports/html/page-shell.ts';
export type { PagePiece } from './reports/html/piece-article.ts';
export type { PieceView, ViewedPicture } from './reports/html/piece-view.ts';
export { renderPressPage } from './reports/html/press-page.ts';
export { type ReportPageOptions, renderReportPage } from './reports/html/report-page.ts';
export { type InspectedFile, toInspectionsJson } from './reports/inspection-json.ts';
export { renderInspection } from './reports/inspection-text.ts';
export { renderMendTable } from './reports/mend-table.ts';
export { phraseFinding } from './reports/phrase.ts';
export { toPressCardJson } from './reports/press-card-json.ts';
export { renderPressCard } from './reports/press-card-text.ts';
export { renderPressingsCsv } from './reports/pressings-csv.ts';
export { renderPressings } from './reports/pressings-text.ts';
export type {
  ArtworkReport,
  DevelopmentReport,
  MendReport,
  PrintReadyOutput,
  ProofOutput,
  RunReport,
  Status,
  Summary,
} from './reports/report.ts';
export { RUN_CSV_HEAD, renderRunCsv } from './reports/run-csv.ts';
export { toResultJsonLine, toRunReportJson, toSummaryJsonLine } from './reports/run-report-json.ts';
export type { LeftOut, SheetPieceReport, SheetReport, SheetsReport } from './reports/sheets-report.ts';
export { statusOf } from './reports/status.ts';
export type { SuitedArtwork } from './reports/suits.ts';
export { toSuitsJson } from './reports/suits-json.ts';
export { renderSuits } from './reports/suits-text.ts';
export { summarise } from './reports/summary.ts';
export { renderNotChecked } from './reports/text-not-checked.ts';
export { renderPrintingAdvice } from './reports/text-printing.ts';
export { renderTextReport, type TextReportOptions } from './reports/text-report.ts';
export { renderTextSheets } from './reports/text-sheets.ts';
export { renderTextSummary } from './reports/text-summary.ts';
export { renderRunTable } from './reports/text-table.ts';
export { escapeJsonText, showHidden } from './reports/visible-text.ts';
export type { MarkKind } from './sheet/marks/mark-kinds.ts';
export { readMarkKinds } from './sheet/marks/read-mark-kinds.ts';
export type { PagePlan, PiecePlace } from './sheet/page-plan.ts';
export type { Orientation, PageMargins, Paper, SidesMm } from './sheet/paper.ts';
export { parsePaper } from './sheet/parse-paper.ts';
export type { GiveWay } from './sheet/steps.ts';
export { type LaidPiece, MOST_COPIES, type SheetOrder } from './sheet-orders.ts';
export { type Suits, suitArtwork } from './suit-artwork.ts';
export { VERSION } from './version.ts';
export { viewBareBlank } from './view-piece.ts';
