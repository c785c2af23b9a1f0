import { readFileSync } from 'node:fs';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import type { IccProfile } from '../../src/icc/profile.ts';
import { readProfile } from '../../src/icc/read-profile.ts';

/** The profile of a file, or null for one of a class without a device side. */
export function readIfDevice(path: string): IccProfile | null {
  try {
    return readProfile(readFileSync(path));
  } catch (error) {
    if (error instanceof BlankcheckError && error.code === 'profile-wrong-class') return null;
    throw error;
  }
}
