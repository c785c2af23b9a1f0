import type { Confidence, Source } from './records.ts';
import { PRACTICE } from './seed-data.ts';

/** A limit that belongs to no blank, paper or printer (seeds/practice.json). */
export interface PracticeLimit {
  readonly id: string;
  readonly value: number;
  readonly unit: 'mm' | 'mm2' | 'px' | 'ppi' | 'percent' | 'ml/m2' | 'L*' | 'alpha' | 'dE00' | 'degrees';
  readonly meaning: string;
  readonly confidence: Confidence;
  readonly sources: readonly Source[];
}

const byId = new Map(PRACTICE.map((limit) => [limit.id, limit]));

/** The limit's value, and `practice:<id>` for findings to name. An id that is no seed is a fault of ours. */
export function practiceLimit(id: string): { readonly value: number; readonly from: string } {
  const limit = byId.get(id);
  if (!limit) throw new Error(`Expected a limit of seeds/practice.json, received "${id}".`);
  return { value: limit.value, from: `practice:${id}` };
}
