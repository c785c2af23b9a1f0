import { resolve } from 'node:path';
import {
  BlankcheckError,
  type BlankRecord,
  type ErrorCode,
  type PagePiece,
  preflight,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { readFileBounded } from '../inputs/read-bounded.ts';
import type { Io } from '../io.ts';
import { isTaken } from '../output/is-taken.ts';
import { readPlacing } from './read-request.ts';

/**
 * The art of `press --art` on its blank, as it would be prepared with the same options.
 * @throws BlankcheckError `no-such-file`; of kind `artwork` where it cannot be read; `bad-option` for a print-ready file
 */
export async function viewPieceForCard(
  blank: BlankRecord,
  told: string,
  options: TypedOptions,
  { cwd, interrupt: signal }: Pick<Io, 'cwd' | 'interrupt'>,
): Promise<PagePiece> {
  const path = resolve(cwd, told);
  if (!(await isTaken(path))) throw new BlankcheckError('no-such-file', `There is no art "${told}".`);
  const bytes = await readFileBounded(path, signal);
  const { report, largeView } = await preflight(
    { path: told, bytes },
    { blank, ...readPlacing(options) },
    { write: false, picture: true, signal },
  );
  if (report.status === 'unreadable')
    throw new BlankcheckError(report.error!.code as ErrorCode, report.error!.message);
  const isPrepared = report.outcomes.some(
    ({ check, status }) => check === 'already-prepared' && status === 'found',
  );
  if (isPrepared)
    throw new BlankcheckError(
      'bad-option',
      `"${told}" was made by this program and is mirrored already.\nName the art that it was made of.`,
    );
  return { report, view: largeView! };
}
