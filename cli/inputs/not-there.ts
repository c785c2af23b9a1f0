import { BlankcheckError } from '../../src/index.ts';

/** The error for a file that an option names and that is not there. */
export function notThere(what: string): BlankcheckError {
  return new BlankcheckError(
    'no-such-file',
    `The ${what} is not there.\nCheck the spelling and the folder you are in.`,
  );
}
