import { formatSize } from '../geometry/length.ts';
import type { InspectedFile, PrintChange } from './inspection.ts';
import { hang, type Page, paint } from './page.ts';
import { showHidden } from './visible-text.ts';

const LABEL_WIDTH = 14;

/** What a file is that was taken for a print-ready one, for a person at a terminal. */
export function renderInspection({ path, inspection, error }: InspectedFile, page: Page): string {
  const line = (label: string, text: string) =>
    hang(`  ${label.padEnd(LABEL_WIDTH - 2)}`, showHidden(text), page);
  if (inspection === null) {
    const lines = [heading('CANNOT READ', path, 'stop', page), ...line('Why', error?.message ?? '')];
    return `${lines.join('\n')}\n`;
  }
  const { format, widthPx, heightPx, statedMm, record, changes } = inspection;
  const size = statedMm
    ? `${formatSize(statedMm.width, statedMm.height)}, ${widthPx} x ${heightPx} px`
    : `not stated, ${widthPx} x ${heightPx} px`;
  if (record === null) {
    const why =
      'It carries no record of the program: another program made it, or saved it without its metadata.';
    const next = 'Make it anew from the art, or measure a print before you press it.';
    return `${[
      heading('NOT PRINT-READY', path, 'stop', page),
      ...line('File', `${format.toUpperCase()}, ${size}`),
      ...hang('  ', `${why} ${next}`, page),
    ].join('\n')}\n`;
  }
  const what = record.kind === 'proof' ? 'A PROOF' : changes.length === 0 ? 'PRINT-READY' : 'CHANGED';
  const mirrored = record.mirrored
    ? 'yes: it reads backwards on the paper, do not mirror it again'
    : 'no: it reads the right way round on the paper';
  const lines = [
    heading(what, path, changes.length === 0 ? 'ready' : 'stop', page),
    ...line('File', `${format.toUpperCase()}, ${size}`),
    ...line(
      'Made for',
      `${record.blankId}, ${formatSize(record.widthMm, record.heightMm)} at ${record.ppi} ppi`,
    ),
    ...line('Mirrored', mirrored),
    ...line('Colours', record.printerProfile ? `converted for ${record.printerProfile.name}` : 'sRGB'),
    ...line('From the art', `SHA-256 ${record.sourceSha256}`),
    ...line('By', `${record.program} ${record.version}`),
    ...changes.flatMap((change) => line('Changed', PHRASES[change])),
    ...(changes.length > 0 ? hang('  ', 'Make it anew from the art before you print.', page) : []),
  ];
  return `${lines.join('\n')}\n`;
}

function heading(word: string, path: string, style: 'ready' | 'stop', page: Page): string {
  return `${paint(`${word}:`, style, page)} ${showHidden(path)}`;
}

const PHRASES: Readonly<Record<PrintChange, string>> = {
  pixels: 'the picture: other pixels, or another number of them, than were written',
  density: 'the density: a program that trusts it prints another size',
  profile: 'the colours: its profile was taken away or replaced, so they will be read wrongly',
  orientation: 'the orientation: a tag turns or mirrors it; its pixels were not compared',
};
