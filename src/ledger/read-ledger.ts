import { findTooDeep, MAX_JSON_DEPTH } from '../catalogue/json-depth.ts';
import { showValue } from '../catalogue/record-fault.ts';
import { listSchemaFaults } from '../catalogue/schema-faults.ts';
import { isPressing } from './is-pressing.ts';
import type { LedgerEntry } from './pressing.ts';

/** A line that is no record, and what was expected there. */
export interface LedgerFault {
  /** Counted from 1. */
  readonly line: number;
  readonly message: string;
}

/** What a ledger holds, in its own order. */
export interface Ledger {
  readonly entries: readonly LedgerEntry[];
  readonly faults: readonly LedgerFault[];
}

/**
 * Reads JSON Lines, with either kind of line end. Empty lines are passed over: two writers that both mend a torn end
 * leave one. Every other line is an entry or a fault. Never throws for what a text holds. Loads the schema library only to tell what is wrong.
 */
export async function readLedger(text: string): Promise<Ledger> {
  const entries: LedgerEntry[] = [];
  const faults: LedgerFault[] = [];
  const lines = text.replace(/^\ufeff/, '').split('\n');
  for (const [index, written] of lines.entries()) {
    if (written.trim() === '') continue;
    const line = index + 1;
    if (findTooDeep(written) !== null) {
      const message = `expected one record as JSON on one line, found more than ${MAX_JSON_DEPTH} lists and objects within each other`;
      faults.push({ line, message });
      continue;
    }
    const json = parseLine(written);
    if (json === undefined) {
      const what = index === lines.length - 1 ? 'the last line is torn or no JSON' : 'no JSON';
      faults.push({ line, message: `expected one record as JSON on one line, found ${what}` });
      continue;
    }
    if (isPressing(json)) entries.push({ line, pressing: json });
    else faults.push({ line, message: (await findPressingFaults(json)) ?? 'expected a record' });
  }
  return { entries, faults };
}

/** What keeps parsed JSON from being a record, as words; null where nothing does. Loads the schema library. */
export async function findPressingFaults(json: unknown): Promise<string | null> {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return `expected one record as a JSON object, found ${showValue(json)}`;
  const { pressingSchema } = await import('./pressing-schema.ts');
  const parsed = pressingSchema.safeParse(json);
  if (parsed.success) return null;
  return listSchemaFaults(parsed.error.issues, json, () => [])
    .map(({ field, expected, found }) => `${field}: expected ${expected}, found ${found}`)
    .join('; ');
}

function parseLine(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
