import { createHash } from 'node:crypto';
import type { IccProfile } from '../icc/profile.ts';
import { readProfile } from '../icc/read-profile.ts';

/** A folder of art rarely has more than a few; each may hold tables of some megabytes (own choice). */
const MOST_KEPT = 4;

/** The last read, the oldest first, by the SHA-256 of their bytes. */
const kept = new Map<string, IccProfile>();

/**
 * The profile in these bytes. The same bytes give the same object as long as it is among the last few, so that what
 * is made for a profile once, and kept with it, serves a whole folder of art. @throws as readProfile
 */
export function readKnownProfile(bytes: Uint8Array): IccProfile {
  const key = createHash('sha256').update(bytes).digest('hex');
  const profile = kept.get(key) ?? readProfile(bytes);
  kept.delete(key);
  kept.set(key, profile);
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
  return profile;
}
