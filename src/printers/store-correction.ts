import type { Edit } from 'jsonc-parser';
import type { Printer } from './printer.ts';

/**
 * The text of a printer's record with another scale correction in it. Nothing else changes: comments, order, spaces and
 * line ends stay. A field that was not there comes last. `text` is a record that `readPrinter` takes.
 */
export async function storeCorrection(
  text: string,
  { scan, feed }: Printer['scaleCorrection'],
): Promise<string> {
  const { applyEdits, findNodeAtLocation, parseTree } = await import('jsonc-parser');
  // A space in place of the byte order mark: places in the text stay what they are.
  const root = parseTree(text.replace(/^\ufeff/, ' '), [], { allowTrailingComma: true })!;
  const correction = findNodeAtLocation(root, ['scaleCorrection']);
  if (!correction) {
    const last = root.children!.at(-1)!;
    const end = root.offset + root.length - 1;
    return applyEdits(text, await addField(text, last.offset + last.length, end, { scan, feed }));
  }
  const edits = Object.entries({ scan, feed }).map(([name, value]): Edit => {
    const { offset, length } = findNodeAtLocation(correction, [name])!;
    return { offset, length, content: String(value) };
  });
  return applyEdits(text, edits);
}

/** A comma right behind the last field, where none is, and the new field before the closing brace: a comment between stays. */
async function addField(
  text: string,
  lastEnd: number,
  end: number,
  { scan, feed }: Printer['scaleCorrection'],
): Promise<Edit[]> {
  const { createScanner } = await import('jsonc-parser');
  const scanner = createScanner(text.slice(lastEnd, end), true);
  scanner.scan();
  const comma = text[lastEnd + scanner.getTokenOffset()] !== ',';
  const indent = /^([ \t]+)"/m.exec(text)?.[1];
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const gap = indent === undefined ? ' ' : `${eol}${indent}`;
  const content = `${gap}"scaleCorrection": { "scan": ${scan}, "feed": ${feed} }`;
  const offset = text.slice(0, end).trimEnd().length;
  const field: Edit = { offset, length: 0, content };
  if (!comma) return [field];
  if (offset === lastEnd) return [{ ...field, content: `,${content}` }];
  return [{ offset: lastEnd, length: 0, content: ',' }, field];
}
