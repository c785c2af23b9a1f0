import { BlankcheckError } from './blankcheck-error.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { Background } from './prepare/step.ts';

export type PrintReadyFormat = 'png' | 'tiff' | 'pdf';

/**
 * The kind of the print-ready file: what is asked for, else PDF for a sheet, PNG for a piece alone, or TIFF where that has
 * inks, which PNG cannot hold. Marks are drawn in inks in a PDF only.
 * @throws BlankcheckError `bad-option` for inks as PNG, with a clear background, or on a sheet that is no PDF
 */
export function choosePrintReadyFormat(
  conversion: Pick<PrinterConversion, 'profile'> | undefined,
  wanted: {
    readonly format?: PrintReadyFormat | undefined;
    readonly background?: Pick<Background, 'alpha'> | undefined;
    readonly sheet?: unknown;
  },
): PrintReadyFormat {
  const { background } = wanted;
  const format = wanted.format ?? (wanted.sheet === undefined ? undefined : 'pdf');
  if (conversion?.profile.space !== 'cmyk') return format ?? 'png';
  if (format === 'png')
    throw new BlankcheckError(
      'bad-option',
      'A PNG cannot hold the CMYK colours of this printer profile.\nTake --format tiff or pdf, or leave --format out.',
    );
  if (format === 'tiff' && wanted.sheet !== undefined)
    throw new BlankcheckError(
      'bad-option',
      'A sheet in the CMYK colours of this printer profile comes as PDF only.\nTake --format pdf, or leave --format out.',
    );
  if (background?.alpha === 0)
    throw new BlankcheckError(
      'bad-option',
      'A transparent background cannot be kept in the CMYK colours of this printer profile.\nLeave --background out: white is bare paper.',
    );
  return format ?? 'tiff';
}
