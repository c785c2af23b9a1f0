import { formatSize } from '../geometry/length.ts';
import type { DroppedMark } from '../sheet/marks/mark-request.ts';
import { hang, type Page, paint } from './page.ts';
import type { LeftOut, SheetPieceReport, SheetReport, SheetsReport } from './sheets-report.ts';
import { showHidden } from './visible-text.ts';

/** The sheets of a run for a person at a terminal: what is on each, its file, how to print them, and what is on none. */
export function renderTextSheets(
  { sheets, leftOut, apart }: SheetsReport,
  options: Page & { readonly driverMirrors?: boolean },
): string {
  const sections = [
    ...sheets.map((sheet, index) => tellOneSheet(sheet, index + 1, sheets.length, options)),
    tellHowToPrint(sheets, options.driverMirrors === true, options),
    tellApart(apart, options),
    tellLeftOut(leftOut, options),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.join('\n')}\n`)
    .join('\n');
}

function tellOneSheet(
  { page: plan, pieces, error, output }: SheetReport,
  number: number,
  count: number,
  page: Page,
): readonly string[] {
  const { paper, orientation, sizeMm, marks, ppi, widthPx, heightPx } = plan;
  const held = orientation === 'portrait' ? 'upright' : 'lying';
  const size = formatSize(sizeMm.width, sizeMm.height);
  const title = count === 1 ? 'Sheet: ' : `Sheet ${number} of ${count}: `;
  return [
    ...hang(
      title,
      showHidden(`${paper}, ${held}, ${size}, ${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}`),
      page,
      'strong',
    ),
    ...tellPieces(pieces).flatMap((line) => hang('  - ', showHidden(line), page)),
    ...tellNoRoom(marks.dropped, page),
    ...(error ? hang('  Not written: ', showHidden(`${error.message} (${error.code})`), page, 'stop') : []),
    ...(output
      ? [`  ${showHidden(output.path)}`, ...hang('  ', `${widthPx} x ${heightPx} px at ${ppi} ppi`, page)]
      : []),
    ...(!error && !output ? hang('  Not written: ', 'this run only looked.', page, 'strong') : []),
  ];
}

/** `24 x tag.png on luggage-tag`, with what is mirrored for pairs. */
function tellPieces(pieces: readonly SheetPieceReport[]): readonly string[] {
  const counts = new Map<string, { all: number; mirrored: number }>();
  for (const { artwork, blank, mirroredDesign } of pieces) {
    const key = `${artwork} on ${blank}`;
    const { all, mirrored } = counts.get(key) ?? { all: 0, mirrored: 0 };
    counts.set(key, { all: all + 1, mirrored: mirrored + (mirroredDesign ? 1 : 0) });
  }
  return [...counts].map(([what, { all, mirrored }]) =>
    mirrored === 0 ? `${all} x ${what}` : `${all} x ${what}, ${mirrored} of them the mirror image, for pairs`,
  );
}

function tellNoRoom(dropped: readonly DroppedMark[], page: Page): readonly string[] {
  const counts = countDropped(dropped).filter(({ reason }) => reason === 'no-room');
  if (counts.length === 0) return [];
  const told = counts.map(({ mark, count }) => (count === 1 ? mark : `${mark} (${count})`)).join(', ');
  return hang('  No room for ', told, page);
}

/** Marks that are not on a page, of each kind how many. */
export function countDropped(dropped: readonly DroppedMark[]): readonly {
  readonly mark: DroppedMark['mark'];
  readonly reason: DroppedMark['reason'];
  readonly count: number;
}[] {
  const counts = new Map<
    string,
    { mark: DroppedMark['mark']; reason: DroppedMark['reason']; count: number }
  >();
  for (const { mark, reason } of dropped) {
    const key = `${mark} ${reason}`;
    counts.set(key, { mark, reason, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}

function tellHowToPrint(
  sheets: readonly SheetReport[],
  driverMirrors: boolean,
  page: Page,
): readonly string[] {
  if (!sheets.some(({ output }) => output)) return [];
  return [
    paint('How to print them', 'strong', page),
    ...hang('  - ', 'Print at 100 % ("actual size"). Switch off "fit to page".', page),
    ...hang(
      '  - ',
      driverMirrors
        ? 'The driver of your printer mirrors the whole page: leave that on.'
        : 'Do not mirror in the print dialog: each piece lies as its blank wants it.',
      page,
    ),
    ...hang(
      '  - ',
      'Before you press, measure the rulers on the paper, and read the words that must read backwards.',
      page,
    ),
  ];
}

function tellApart(apart: readonly string[], page: Page): readonly string[] {
  if (apart.length === 0) return [];
  return hang(
    'Not kept together: ',
    showHidden(`no page takes what belongs together of ${apart.join(', ')}.`),
    page,
    'look',
  );
}

const WHY_LEFT_OUT: Readonly<Record<LeftOut['reason'], string>> = {
  stop: 'its checks say stop; mend what is marked STOP, or print it all the same with --anyway',
  unreadable: 'it cannot be read',
  'other-side': 'the art of the other side is left out',
  'nothing-printed': 'nothing of it would be printed',
  'larger-than-page': 'it is larger than the printable part of the sheet',
  'larger-than-platen': 'it is larger than the platen',
};

function tellLeftOut(leftOut: readonly LeftOut[], page: Page): readonly string[] {
  return leftOut.flatMap(({ artwork, blank, reason, copies }) =>
    hang(
      'LEFT OUT: ',
      showHidden(`${copies} x ${artwork} on ${blank}: ${WHY_LEFT_OUT[reason]}.`),
      page,
      'stop',
    ),
  );
}
