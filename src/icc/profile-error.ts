import { BlankcheckError, type ErrorCode } from '../blankcheck-error.ts';

/** The codes of an error in a profile. */
export type ProfileErrorCode = Extract<ErrorCode, `profile-${string}`>;

const HOW_TO_MEND: Readonly<Record<ProfileErrorCode, string>> = {
  'profile-malformed': 'export or download the profile again',
  'profile-truncated': 'the end of the profile is missing; export or download it again',
  'profile-unsupported': 'use an ICC profile of version 2 or 4',
  'profile-wrong-class': 'use the profile of a scanner, a display, a printer or a colour space',
  'profile-missing-tag': 'use a profile that holds this direction',
};

/** An error about a profile: `where` names the part, `what` says what was expected and found there. */
export function profileError(code: ProfileErrorCode, where: string, what: string): BlankcheckError {
  return new BlankcheckError(code, `Colour profile, ${where}: ${what}; ${HOW_TO_MEND[code]}`);
}
