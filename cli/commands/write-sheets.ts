import {
  type BlankcheckError,
  encodeSheet,
  encodeSheetsAsPdf,
  type LaidSheet,
  type Limits,
  type PrinterConversion,
  type PrintReadyFormat,
  type SheetReport,
} from '../../src/index.ts';
import { findTarget, publish, type Target, type TargetOptions } from './output-target.ts';

export interface WriteSheetsOptions extends TargetOptions {
  readonly format: PrintReadyFormat;
  readonly conversion: PrinterConversion | undefined;
  readonly driverMirrors: boolean;
  readonly limits: Partial<Limits>;
}

/**
 * Writes the sheets: a PDF of all, or pictures, one page in memory at a time; none of them where one may not be written, so that what lies in the
 * folder is of one run. `paths` is empty in a dry run. @throws whatever aborted the signal.
 */
export async function writeSheets(
  sheets: readonly LaidSheet[],
  paths: readonly string[],
  options: WriteSheetsOptions,
): Promise<readonly SheetReport[]> {
  const targets: Target[] = [];
  if (options.format === 'pdf' && paths[0] !== undefined) return writePdf(sheets, paths[0], options);
  for (const path of paths) targets.push(await findTarget(path, '--out', options));
  const refused = targets.find(({ refusal }) => refusal)?.refusal ?? null;
  const told: SheetReport[] = [];
  let failed: BlankcheckError | null = refused;
  for (const [index, sheet] of sheets.entries()) {
    const target = targets[index];
    if (!target) {
      told.push(reportOf(sheet, null, null));
      continue;
    }
    failed ??= await writeSheet(sheet, target, options);
    told.push(reportOf(sheet, failed ? null : target.path, failed));
  }
  return told;
}

async function writePdf(
  sheets: readonly LaidSheet[],
  path: string,
  options: WriteSheetsOptions,
): Promise<readonly SheetReport[]> {
  const target = await findTarget(path, '--out', options);
  const failed = target.refusal ?? (await publish(target, await encodeSheetsAsPdf(sheets, options), options));
  return sheets.map((sheet) => reportOf(sheet, failed ? null : target.path, failed));
}

async function writeSheet(
  sheet: LaidSheet,
  target: Target,
  options: WriteSheetsOptions,
): Promise<BlankcheckError | null> {
  return publish(target, await encodeSheet(sheet, options), options);
}

function reportOf(
  { page, pieces }: LaidSheet,
  path: string | null,
  error: BlankcheckError | null,
): SheetReport {
  const { widthPx, heightPx, sizeMm, ppi } = page;
  const size = { widthPx, heightPx, widthMm: sizeMm.width, heightMm: sizeMm.height };
  return {
    page,
    pieces: pieces.map(({ artwork, blank, copy, mirroredDesign }) => ({
      artwork,
      blank,
      copy,
      mirroredDesign,
    })),
    error: error && { code: error.code, message: error.message },
    output: path === null ? null : { path, ...size, ppi },
  };
}
