import { formatLength, formatSize } from '../geometry/length.ts';
import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport, PrintReadyOutput } from './report.ts';
import { showHidden } from './visible-text.ts';

/** Where the print-ready file is and how to print it, or why there is none; nothing of an unreadable artwork. */
export function tellFile(report: ArtworkReport, page: Page): readonly string[] {
  if (report.status === 'unreadable') return [];
  const file = report.output
    ? tellOutput(report.output, report, page)
    : hang('  Not written: ', tellWhyNotWritten(report), page, report.error ? 'stop' : 'strong');
  return [paint('Print-ready file', 'strong', page), ...file];
}

/** Why there is no print-ready file of an artwork that could be read. */
export function tellWhyNotWritten({ error, status, placementMm }: ArtworkReport): string {
  if (error) return showHidden(`${error.message} (${error.code})`);
  if (!placementMm) return 'nothing of the art is visible.';
  if (status !== 'stop') return 'this run only looked.';
  return 'mend what is marked STOP first, or write it all the same with prepare --anyway.';
}

function tellOutput(output: PrintReadyOutput, report: ArtworkReport, page: Page): readonly string[] {
  const { widthMm, heightMm, widthPx, heightPx, ppi } = output;
  return [
    // In one piece at any width, so that it can be copied.
    `  ${showHidden(output.path)}`,
    ...hang('  ', `${formatSize(widthMm, heightMm)}, ${widthPx} x ${heightPx} px at ${ppi} ppi`, page),
    '',
    paint('How to print it', 'strong', page),
    ...tellPrinting(output, report).flatMap((advice) => hang('  - ', advice, page)),
  ];
}

/** How a print-ready file is printed, a sentence or two each. */
export function tellPrinting(output: PrintReadyOutput, report: ArtworkReport): readonly string[] {
  return [
    'Print at 100 % ("actual size"). Switch off "fit to page".',
    tellMirroring(output, report),
    ...tellColours(report),
    ...tellCorrection(report),
    ...tellRuler(report),
  ];
}

function tellMirroring({ mirrored }: PrintReadyOutput, { blank, printer }: ArtworkReport): string {
  if (printer?.driverMirrors) return tellDriverMirroring(mirrored, printer.name);
  if (mirrored)
    return 'Mirrored: print it as it is, do not mirror again in the print dialog. It reads backwards on the paper and the right way round on the blank.';
  const reason = blank.surface === 'second' ? ': this blank is looked at through its body' : '';
  return `Not mirrored, on purpose${reason}. Print it as it is, do not mirror in the print dialog.`;
}

/** What the driver does is undone or left to it: the paper looks as without such a driver. */
function tellDriverMirroring(mirrored: boolean, printer: string): string {
  const who = showHidden(printer);
  if (mirrored)
    return `Mirrored, because the driver of ${who} mirrors it back: leave that on. It reads the right way round on the paper: this blank is looked at through its body.`;
  return `Not mirrored, because the driver of ${who} mirrors it: leave that on. It must read backwards on the paper.`;
}

function tellColours({ colours }: ArtworkReport): readonly string[] {
  if (!colours) return [];
  const told =
    colours.convertedBy === 'file'
      ? `The colours ${colours.unchanged ? 'came' : 'are'} converted for "${showHidden(colours.tagged)}" already: the print dialog must not manage colour, or they are converted twice.`
      : 'The file is tagged sRGB: the driver or the print dialog converts its colours to those of the printer. Let one of the two do it, not both.';
  return [told];
}

/** The canvas is fixed by the blank; only on a whole sheet is there room to draw a piece larger or smaller. */
function tellCorrection({ printer, sheet }: ArtworkReport): readonly string[] {
  if (!printer || sheet) return [];
  const { scan, feed } = printer.scaleCorrection;
  if (scan === 1 && feed === 1) return [];
  const told = `The scale correction of ${showHidden(printer.name)} (${scan} across, ${feed} along the sheet) is not in this file: it keeps the size of the piece. Only whole sheets are corrected.`;
  return [told];
}

/** Only where the art lies wholly on the blank: of cut art the paper shows less than its size. */
function tellRuler({ inkedMm, blank, dummy, development }: ArtworkReport): readonly string[] {
  if (dummy) {
    const outline = formatLength(development?.widthMm ?? blank.widthMm);
    return [
      `Lay a ruler on the paper: the outline must be ${outline} wide. If it is smaller, the print dialog has shrunk it. Then cut it out and try it on the bare blank.`,
    ];
  }
  if (!inkedMm) return [];
  const { x, y, width, height } = inkedMm;
  const whole = x >= 0 && y >= 0 && x + width <= blank.widthMm && y + height <= blank.heightMm;
  if (!whole) return [];
  const told = `Before you press, lay a ruler on the paper: the printed part must be ${formatLength(width)} wide. If it is smaller, the print dialog has shrunk it.`;
  return [told];
}
