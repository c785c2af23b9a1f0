import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { showHidden } from './visible-text.ts';

/** Where the annotated picture is, or why there is none, where one was asked for. */
export function tellPicture({ picture }: ArtworkReport, page: Page): readonly string[] {
  if (!picture) return [];
  const told =
    'error' in picture
      ? hang('  Not written: ', showHidden(`${picture.error.message} (${picture.error.code})`), page, 'stop')
      : [`  ${showHidden(picture.path)}`];
  return [paint('Picture with the findings', 'strong', page), ...told];
}
