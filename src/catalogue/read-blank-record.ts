import { BlankcheckError } from '../blankcheck-error.ts';
import { findBlankFaults } from './blank-faults.ts';
import type { RecordFault } from './record-fault.ts';
import { describeFault } from './record-fault.ts';
import type { BlankRecord } from './records.ts';

/** More faults than this in one message help nobody. */
const MOST_FAULTS = 5;

/**
 * The blank of a parsed JSON value, checked field by field and against itself; `family` may be left out. `where` says
 * in the message what was read, such as the name of the file. Loads the schema library, which listing blanks does not.
 * @throws BlankcheckError `bad-blank-record` that names the fields, what was expected and what was found.
 */
export async function readBlankRecord(json: unknown, where: string): Promise<BlankRecord> {
  const { parseBlank } = await import('./parse-blank.ts');
  const parsed = parseBlank(json);
  const faults = parsed.blank ? findBlankFaults(parsed.blank) : parsed.faults;
  if (parsed.blank && faults.length === 0) return parsed.blank;
  throw new BlankcheckError('bad-blank-record', describeFaults(faults, where));
}

function describeFaults(faults: readonly RecordFault[], where: string): string {
  const shown = faults.slice(0, MOST_FAULTS).map(describeFault);
  const more = faults.length > MOST_FAULTS ? `; and ${faults.length - MOST_FAULTS} more` : '';
  return `The blank record ${where} cannot be used. ${shown.join('; ')}${more}.`;
}
