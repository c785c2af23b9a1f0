import type { InspectionChange, InspectionVerdict } from '../formats/inspection.ts';
import type { PrintRecord } from '../formats/print-record.ts';
import { formatSize } from '../geometry/length.ts';
import type { InspectedFile } from './inspection-json.ts';
import { hang, type Page, paint, type Style } from './page.ts';
import { showHidden } from './visible-text.ts';

const VERDICTS = {
  unchanged: { text: 'print-ready file, unchanged since it was written', style: 'ready' },
  changed: { text: 'was a print-ready file, but was changed since: prepare the art again', style: 'stop' },
  proof: { text: 'a proof, to be looked at and never printed', style: 'look' },
  'record-damaged': {
    text: 'was a print-ready file, but its record is damaged: prepare the art again',
    style: 'stop',
  },
  'not-print-ready': {
    text: 'not a print-ready file of this program, or its record was lost on the way',
    style: 'stop',
  },
  unreadable: { text: 'cannot be read', style: 'stop' },
} as const satisfies Record<InspectionVerdict, { text: string; style: Style }>;

/** What a file is, for a person at a terminal: the verdict, what was changed, its true size, its record. */
export function renderInspection(file: InspectedFile, page: Page): string {
  const { path, verdict, error, changes, record } = file;
  const { text, style } = VERDICTS[verdict];
  const lines = [
    paint(showHidden(path), 'strong', page),
    ...hang('  ', text, page).map((line) => paint(line, style, page)),
    ...(error ? hang('  ', showHidden(error.message), page) : []),
    ...changes.flatMap((change) => hang('  Changed:  ', showHidden(tellChange(change)), page)),
    ...tellSize(file).flatMap((told) => hang('  Is:       ', told, page)),
    ...(record ? tellRecord(record).flatMap((told) => hang('  Written:  ', showHidden(told), page)) : []),
  ];
  return `${lines.join('\n')}\n`;
}

function tellSize({
  format,
  widthPx,
  heightPx,
  statedPpi,
  trueSizeMm,
  pages,
}: InspectedFile): readonly string[] {
  if (format === 'pdf') {
    const size = trueSizeMm ? formatSize(trueSizeMm.width, trueSizeMm.height) : 'unknown size';
    return [`PDF, ${pages === 1 ? '1 page' : `${pages} pages, the first`} of ${size}`];
  }
  if (format === null || widthPx === null) return [];
  const pixels = `${format.toUpperCase()}, ${widthPx} x ${heightPx} px`;
  if (statedPpi === null || trueSizeMm === null)
    return [`${pixels}, states no density: programs choose a size of their own`];
  const { x, y } = statedPpi;
  const ppi = x === y ? `${tidy(x)} ppi` : `${tidy(x)} ppi across and ${tidy(y)} ppi down`;
  return [`${pixels} at ${ppi}: prints ${formatSize(trueSizeMm.width, trueSizeMm.height)}`];
}

function tellRecord(record: PrintRecord): readonly string[] {
  const { program, version, blankId, widthMm, heightMm, ppi, mirrored, sourceSha256, printerProfile } =
    record;
  return [
    `by ${program} ${version} for ${blankId}, ${formatSize(widthMm, heightMm)} at ${tidy(ppi)} ppi, ${mirrored ? 'mirrored' : 'not mirrored'}`,
    `from the art with the SHA-256 ${sourceSha256}`,
    printerProfile ? `converted by the printer profile "${printerProfile.name}"` : 'in sRGB',
  ];
}

function tellChange(change: InspectionChange): string {
  switch (change.code) {
    case 'another-format':
      return 'saved in another format, which print-ready files never have';
    case 'size-in-pixels':
      return `another number of pixels, it was written with ${change.expectedPx.width} x ${change.expectedPx.height}`;
    case 'pixels':
      return 'the picture: its samples are not those that were written';
    case 'density':
      return `the density, it was written with ${tellPpi(change.expectedPpi)}: it prints at another size`;
    case 'density-lost':
      return `the density is lost, it was written with ${tellPpi(change.expectedPpi)}`;
    case 'profile':
      return `the colour profile, it was written with ${change.expected}`;
    case 'profile-lost':
      return `the colour profile is lost, it was written with ${change.expected}`;
    case 'orientation':
      return `a tag that turns or mirrors it was added (orientation ${change.orientation})`;
    case 'document':
      return 'its pictures, marks, pages or colours: the file is not the one that was written';
    case 'pages':
      return `it has ${change.pages} pages, it was written with one`;
  }
}

function tellPpi({ x, y }: { readonly x: number; readonly y: number }): string {
  return x === y ? `${tidy(x)} ppi` : `${tidy(x)} ppi across and ${tidy(y)} ppi down`;
}

/** PNG's whole pixels per metre make 299.9994 of 300. */
const tidy = (ppi: number) => String(Number(ppi.toFixed(2)));
