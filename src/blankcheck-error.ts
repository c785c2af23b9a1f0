/**
 * Every code an error of ours can carry. Codes are stable: scripts rely on them.
 * `artwork` codes make one artwork unreadable and the run goes on; `usage` codes end the run with exit 2;
 * `output` codes leave the verdict and only say why no file was written.
 */
export const ERROR_KINDS = {
  // usage and configuration
  'bad-option': 'usage',
  'bad-length': 'usage',
  'length-without-unit': 'usage',
  'bad-size': 'usage',
  'bad-colour': 'usage',
  'bad-offset': 'usage',
  'bad-blank-record': 'usage',
  'bad-wrap': 'usage',
  'bad-condition': 'usage',
  'bad-printer-profile': 'usage',
  'bad-printer-record': 'usage',
  'bad-ruler': 'usage',
  'bad-temperature': 'usage',
  'temperature-without-unit': 'usage',
  'bad-time': 'usage',
  'time-without-unit': 'usage',
  'bad-date': 'usage',
  'bad-result': 'usage',
  'unknown-defect': 'usage',
  'bad-cost': 'usage',
  'bad-ledger': 'usage',
  'missing-printer': 'usage',
  'missing-sheet': 'usage',
  'unknown-sheet': 'usage',
  'bad-job': 'usage',
  'bad-config': 'usage',
  'margins-too-large': 'usage',
  'blank-has-no-safe-area': 'usage',
  'measured-does-not-fit': 'usage',
  'unknown-blank': 'usage',
  'unknown-mend': 'usage',
  'unknown-finding': 'usage',
  'unknown-mark': 'usage',
  'unknown-command': 'usage',
  'missing-blank': 'usage',
  'missing-artwork': 'usage',
  'no-such-file': 'usage',
  'no-artwork-in-folder': 'usage',
  'ppi-out-of-range': 'usage',
  'print-too-large': 'usage',
  'not-built-yet': 'usage',
  // one artwork
  'empty-file': 'artwork',
  'unknown-format': 'artwork',
  'unsupported-format': 'artwork',
  damaged: 'artwork',
  'too-many-pixels': 'artwork',
  'too-many-bytes': 'artwork',
  'too-slow': 'artwork',
  'cannot-read': 'artwork',
  crashed: 'artwork',
  'drawing-without-size': 'artwork',
  'archive-entry-refused': 'artwork',
  'archive-damaged': 'artwork',
  // a profile inside or beside an artwork
  'profile-malformed': 'profile',
  'profile-truncated': 'profile',
  'profile-unsupported': 'profile',
  'profile-wrong-class': 'profile',
  'profile-missing-tag': 'profile',
  // writing
  'file-exists': 'output',
  'cannot-write': 'output',
} as const satisfies Record<string, 'usage' | 'artwork' | 'profile' | 'output'>;

export type ErrorCode = keyof typeof ERROR_KINDS;
export type ErrorKind = (typeof ERROR_KINDS)[ErrorCode];

/**
 * The one error that the library throws on purpose: bad calls and bytes that cannot be read.
 * The message says what is wrong, where, and how to mend it. Anything else thrown is a fault of ours.
 */
export class BlankcheckError extends Error {
  override readonly name = 'BlankcheckError';
  readonly code: ErrorCode;
  readonly kind: ErrorKind;

  constructor(code: ErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
    this.kind = ERROR_KINDS[code];
  }
}
