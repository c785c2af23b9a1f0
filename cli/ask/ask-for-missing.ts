import { BlankcheckError } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Asker } from './asker.ts';
import { FITS, searchBlankAnswers, searchSizeAnswers } from './search-answers.ts';

/**
 * The options with answers for what a run cannot do without and nobody said: the blank, the size of the art. What was
 * typed or set is not asked for. `asker` is null where nobody can be asked.
 * @throws BlankcheckError `bad-option` then; whatever interrupted.
 */
export async function askForMissing(options: TypedOptions, asker: Asker | null): Promise<TypedOptions> {
  if (asker === null)
    throw new BlankcheckError(
      'bad-option',
      '--ask was given, but there is no terminal to ask at.\nSay what is missing with --blank and --width instead.',
    );
  const { ask: _ask, ...said } = options;
  const blank =
    said.blank ??
    (await asker.choose(
      'Which blank? Type a word such as tile, or a size such as 200x150mm',
      searchBlankAnswers,
      'No blank fits. Try fewer letters, or a size with its unit, such as 200x150mm or round:95mm.',
    ));
  const isSized = said.width !== undefined || said.height !== undefined || said.fit !== undefined;
  return { ...said, blank, ...(isSized ? {} : await askForSize(asker)) };
}

async function askForSize(asker: Asker): Promise<Pick<TypedOptions, 'fit' | 'width'>> {
  const answer = await asker.choose(
    'How large is the picture? Or type how wide, such as 120mm or 5in',
    searchSizeAnswers,
    'That is no width. Write it with its unit, such as 120mm or 5in.',
  );
  const fit = FITS.find(({ value }) => value === answer)?.value;
  return fit ? { fit } : { width: answer };
}
