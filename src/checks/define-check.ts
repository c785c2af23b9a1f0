import type { PrinterConversion } from '../conditions/printer-conversion.ts';
import type { PrintingCondition } from '../conditions/printing-condition.ts';
import type { Artwork } from '../formats/artwork.ts';
import type { PointMm, PointPx, RectMm } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import type { Extents } from '../raster/survey.ts';
import type { PageMargins, Paper } from '../sheet/paper.ts';
import type { Fact, Finding, Severity } from './finding.ts';

/** The art as it will be printed, before its colours are converted: turned, scaled, in the artwork's own colours. */
export interface PrintPicture {
  readonly raster: Raster;
  /** Where its top left corner lies, mm from that of the outline box, seen from the front. */
  readonly originMm: PointMm;
  /** Size of one of its pixels on the blank. */
  readonly pixelMm: number;
}

/** A whole page that is asked for. */
export interface WantedPage {
  readonly paper: Paper;
  readonly margins: PageMargins;
  /** All that is inked, on the blank; null when nothing is. White padding needs no paper. */
  readonly printedMm: RectMm | null;
}

/** What checks may look at. `job` is null when nothing is visible: there is nothing to place. */
export interface Subject {
  readonly artwork: Artwork;
  readonly extents: Extents;
  /** Points that bound the visible pixels: corners of their hull, or of the rim's pixels in outlines with inward corners. */
  readonly rimPx: readonly PointPx[];
  readonly job: Job | null;
  /** The printed part of the art at its print size; null when nothing is visible. */
  readonly picture: PrintPicture | null;
  /** Which colours the printer can make; null when nothing is visible. */
  readonly condition: PrintingCondition | null;
  /** How the file is converted for the printer; null where the driver does it. */
  readonly conversion: PrinterConversion | null;
  /** null when the file is the piece alone. */
  readonly page: WantedPage | null;
}

/** What a check needs, or why it cannot run. */
export type Needs<Inputs> = { readonly inputs: Inputs } | { readonly skip: string };

/** What a check found; facts may be told of a pass too. */
export interface CheckResult {
  readonly findings: readonly Finding[];
  readonly facts?: Readonly<Record<string, Fact>>;
  /** Why nothing found is not yet a pass: part of what was to be judged could not be measured. */
  readonly skip?: string;
}

/** A check: everything about it in one file. */
export interface CheckDefinition<Inputs = unknown> {
  /** Thing first, then what is checked; its file has the same name. */
  readonly id: string;
  readonly title: string;
  /** What goes wrong on the blank. */
  readonly reason: string;
  /** Published sources, or "common practice, no source". */
  readonly source: readonly string[];
  /** Every code it can give, with the severities it can have. */
  readonly codes: Readonly<Record<string, readonly Severity[]>>;
  readonly needs: (subject: Subject) => Needs<Inputs>;
  readonly run: (inputs: Inputs) => CheckResult;
  /** The sentence of each code: what is wrong, where, how much, what to do. Lengths in mm and inches. */
  readonly phrases: Readonly<Record<string, (finding: Finding) => string>>;
}

/** Keeps the inputs typed inside the check's file and hides their type from the list. */
export function defineCheck<Inputs>(check: CheckDefinition<Inputs>): CheckDefinition {
  return check as CheckDefinition;
}
