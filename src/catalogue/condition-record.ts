import type { Confidence, Source } from './records.ts';

/** A printing condition that ships (seeds/printing-conditions.json): which colours a printer can make. */
export interface ConditionRecord {
  readonly id: string;
  readonly name: string;
  /** True for a stand-in that is nobody's printer: what it finds is advice. */
  readonly reference: boolean;
  /** File of its ICC profile, below seeds. */
  readonly profile: string;
  /** Whose measurements it rests on; to be shown wherever the condition is. */
  readonly attribution: string;
  readonly confidence: Confidence;
  readonly sources: readonly Source[];
}
