import type { ArtworkReport } from '../../src/index.ts';

/** So many reports are read one after the other; of more, those of what is ready are left out, the others kept short. */
const MOST_IN_FULL = 20;

export function areMany(artworks: number): boolean {
  return artworks > MOST_IN_FULL;
}

/** Is it among those that are told where there are many? */
export function needsALook({ status, error }: ArtworkReport): boolean {
  return status !== 'ready' || error !== null;
}

/** `pages`: can a page of all be had? */
export function tellBrevity(pages: boolean): string {
  const all = pages ? ', or\nask for a page of all with --report <file>.' : '.';
  return `
blankcheck: of so many artworks only what stops or needs a look is told here.
To see all that was found and checked of one, name it alone${all}
`;
}
