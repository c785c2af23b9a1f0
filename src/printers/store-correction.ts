import type { Printer } from './printer.ts';

/**
 * The text of a printer's record with another scale correction in it: comments, order and line ends stay as they are,
 * a new field is indented like its neighbours. `text` is a record that `readPrinter` takes.
 */
export async function storeCorrection(
  text: string,
  { scan, feed }: Printer['scaleCorrection'],
): Promise<string> {
  const { applyEdits, modify } = await import('jsonc-parser');
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const body = text.slice(mark.length);
  const indent = /^([ \t]+)"/m.exec(body)?.[1] ?? '  ';
  const formattingOptions = {
    insertSpaces: !indent.startsWith('\t'),
    tabSize: indent.length,
    eol: body.includes('\r\n') ? '\r\n' : '\n',
  };
  const set = (before: string, path: readonly string[], value: unknown) =>
    applyEdits(before, modify(before, [...path], value, { formattingOptions }));
  // One after the other: a comment between the two stays.
  const scanned = set(body, ['scaleCorrection', 'scan'], scan);
  return mark + set(scanned, ['scaleCorrection', 'feed'], feed);
}
