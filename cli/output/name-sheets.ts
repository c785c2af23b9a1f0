import { join } from 'node:path';
import { portableName } from './portable-name.ts';

/** What the names of a run's sheets are made of. */
export interface SheetNameParts {
  /** Where they go. */
  readonly folder: string;
  /** The stem of the first artwork, or of the job file. */
  readonly stem: string;
  /** Further artworks; 0 where a job file gives the name. */
  readonly more: number;
  readonly paper: string;
  readonly sheets: number;
  readonly extension: string;
}

/**
 * Where the sheets of a run go: `<first art>.and-<n>-more.sheet-<paper>.<extension>`, without the count where it is the
 * only art; where there are several, `.1-of-3` before the extension.
 */
export function nameSheets({
  folder,
  stem,
  more,
  paper,
  sheets,
  extension,
}: SheetNameParts): readonly string[] {
  const art = more === 0 ? stem : `${stem}.and-${more}-more`;
  return Array.from({ length: sheets }, (_, index) => {
    const which = sheets === 1 ? '' : `.${index + 1}-of-${sheets}`;
    return join(folder, portableName(art, `sheet-${paper}${which}.${extension}`));
  });
}
