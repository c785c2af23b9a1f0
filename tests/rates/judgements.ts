import { readFileSync } from 'node:fs';

/** What somebody who looked at a picture said of an alarm, or of a silence. */
export interface Judgement {
  readonly picture: string;
  readonly check: string;
  readonly code: string;
  readonly judgement: 'true' | 'false' | 'rightly-silent' | 'missed';
  readonly note: string;
}

/** The judgements that are kept in the tree. */
export function readJudgements(): readonly Judgement[] {
  return JSON.parse(readFileSync(new URL('judgements.json', import.meta.url), 'utf8'));
}
