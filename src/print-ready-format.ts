import { BlankcheckError } from './blankcheck-error.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { Background } from './prepare/step.ts';

export type PrintReadyFormat = 'png' | 'tiff';

/**
 * The kind of the print-ready file: what is asked for, else PNG, or TIFF for inks, which PNG cannot hold.
 * @throws BlankcheckError `bad-option` for inks as PNG or with a clear background
 */
export function choosePrintReadyFormat(
  conversion: Pick<PrinterConversion, 'profile'> | undefined,
  wanted: {
    readonly format?: PrintReadyFormat | undefined;
    readonly background?: Pick<Background, 'alpha'> | undefined;
  },
): PrintReadyFormat {
  const { format, background } = wanted;
  if (conversion?.profile.space !== 'cmyk') return format ?? 'png';
  if (format === 'png')
    throw new BlankcheckError(
      'bad-option',
      'A PNG cannot hold the CMYK colours of this printer profile.\nTake --format tiff, or leave --format out.',
    );
  if (background?.alpha === 0)
    throw new BlankcheckError(
      'bad-option',
      'A transparent background cannot be kept in the CMYK colours of this printer profile.\nLeave --background out: white is bare paper.',
    );
  return 'tiff';
}
