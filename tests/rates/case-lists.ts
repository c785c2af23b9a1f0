import type { FaultCase, Plant } from './fault-case.ts';
import { MARKED_PREVIEW_CASES } from './marked-preview-cases.ts';

/** The made pictures of each check; a check gets its rates by standing here. */
export const CASE_LISTS: Readonly<Record<string, readonly FaultCase[]>> = {
  'marked-preview': MARKED_PREVIEW_CASES,
};

/** The faults that are put into real pictures, in turn. */
export const PLANTS: readonly Plant[] = [];
