import { BlankcheckError } from '../blankcheck-error.ts';
import { parseCommentedJson } from '../catalogue/commented-json.ts';
import { defaultMarginsMm } from './default-margins.ts';
import { findPaper } from './paper.ts';
import type { Printer } from './printer.ts';
import { findPrinterFaults } from './printer-faults.ts';

/** More faults than this in one message help nobody. */
const MOST_FAULTS = 5;

/**
 * The printer that a text describes: one record as JSON, which may hold comments. `where` says in messages what was
 * read, such as the name of the file. Loads parser and schema library, which nothing else needs.
 * @throws BlankcheckError `bad-printer-record` that names line, field, what was expected and what was found.
 */
export async function readPrinter(text: string, where: string): Promise<Printer> {
  const json = await parseCommentedJson(text);
  if ('fault' in json) {
    const { line, expected } = json.fault;
    throw badRecord(where, [`line ${line}: expected ${expected}`]);
  }
  const { parsePrinter } = await import('../catalogue/parse-printer.ts');
  const parsed = parsePrinter(json.value);
  const faults = parsed.printer ? findPrinterFaults(parsed.printer) : parsed.faults;
  if (!parsed.printer || faults.length > 0) {
    throw badRecord(
      where,
      faults.map(
        ({ path, field, expected, found }) =>
          `line ${json.lineOf(path)}: ${field || 'the record'}: expected ${expected}, found ${found}`,
      ),
    );
  }
  const { name, paper, marginsMm, ppi, scaleCorrection, profile, driverMirrors } = parsed.printer;
  return {
    name,
    paper: findPaper(paper)!,
    marginsMm: marginsMm ?? defaultMarginsMm(),
    ...(ppi !== undefined && { ppi }),
    scaleCorrection: scaleCorrection ?? { scan: 1, feed: 1 },
    ...(profile !== undefined && { profile }),
    driverMirrors: driverMirrors ?? false,
  };
}

function badRecord(where: string, faults: readonly string[]): BlankcheckError {
  const shown = faults.slice(0, MOST_FAULTS).join('; ');
  const more = faults.length > MOST_FAULTS ? `; and ${faults.length - MOST_FAULTS} more` : '';
  return new BlankcheckError(
    'bad-printer-record',
    `The printer record ${where} cannot be used: ${shown}${more}.\nThe fields are explained in seeds/schema/printer.schema.json.`,
  );
}
