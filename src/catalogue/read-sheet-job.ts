import { BlankcheckError } from '../blankcheck-error.ts';
import { parseCommentedJson } from './commented-json.ts';
import { showValue } from './record-fault.ts';
import { listSchemaFaults, type PlacedFault } from './schema-faults.ts';
import type { SheetJob } from './sheet-job-schema.ts';

/** A job and where in its text each field stands. */
export interface ReadSheetJob {
  readonly job: SheetJob;
  /** Counted from 1. */
  readonly lineOf: (path: readonly PropertyKey[]) => number;
}

/** More faults than this in one message help nobody. */
const MOST_FAULTS = 5;

/**
 * The job that a text describes, as JSON that may hold comments. `where` says in messages what was read. Looks at each
 * field by itself: words such as lengths are read by whoever needs them. Loads parser and schema library only then.
 * @throws BlankcheckError `bad-job` that names line, field, what was expected and what was found.
 */
export async function readSheetJob(text: string, where: string): Promise<ReadSheetJob> {
  const json = await parseCommentedJson(text);
  if ('fault' in json) {
    const { line, expected } = json.fault;
    throw badJob(where, [`line ${line}: expected ${expected}`]);
  }
  const { value, lineOf } = json;
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw badJob(where, [`line 1: expected one job as a JSON object, found ${showValue(value)}`]);
  const { jobPieceSchema, sheetJobSchema } = await import('./sheet-job-schema.ts');
  const parsed = sheetJobSchema.safeParse(value);
  if (parsed.success) return { job: parsed.data, lineOf };
  const keysAt = (path: readonly PropertyKey[]) =>
    Object.keys(path[0] === 'pieces' ? jobPieceSchema.shape : sheetJobSchema.shape);
  const faults = listSchemaFaults(parsed.error.issues, value, keysAt);
  throw badJob(
    where,
    faults.map((fault) => tellFault(fault, lineOf)),
  );
}

function tellFault(
  { path, field, expected, found }: PlacedFault,
  lineOf: (path: readonly PropertyKey[]) => number,
): string {
  return `line ${lineOf(path)}: ${field}: expected ${expected}, found ${found}`;
}

function badJob(where: string, faults: readonly string[]): BlankcheckError {
  const shown = faults.slice(0, MOST_FAULTS).join('; ');
  const more = faults.length > MOST_FAULTS ? `; and ${faults.length - MOST_FAULTS} more` : '';
  return new BlankcheckError(
    'bad-job',
    `The job file ${where} cannot be used: ${shown}${more}.\nThe fields are explained in seeds/schema/sheet-job.schema.json.`,
  );
}
