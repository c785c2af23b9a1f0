import { BlankcheckError } from '../../src/index.ts';

/** What is said where no artwork was named. */
export function missingArtwork(): BlankcheckError {
  return new BlankcheckError(
    'missing-artwork',
    'No artwork was given.\nName files, folders or ZIP archives, or - for standard input.',
  );
}
