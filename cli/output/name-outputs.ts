import { portableName, shortHash } from './portable-name.ts';

/** What the name of a print-ready file is made of. */
export interface NameParts {
  /** Where the file goes, so that only files of one folder are told apart. */
  readonly folder: string;
  /** `pear` of `pear.png`, `stdin`, `<zip>.<entry>`. */
  readonly stem: string;
  /** `png` of `pear.png`; may be empty. */
  readonly extension: string;
  /** Name of the folder that the artwork lies in; may be empty. */
  readonly parent: string;
  /** The artwork's path, which no other artwork of the run has. */
  readonly path: string;
}

/**
 * The names of the print-ready files of a run, in the order of the artworks: `<art>.<blank>.<extension>`. Artworks
 * that would share a name keep their own extension in it, then their folder's name, then a short hash of their path.
 * Names that differ only in case or in how accents are spelt count as shared: some systems cannot hold both.
 */
export function nameOutputs(
  artworks: readonly NameParts[],
  blankId: string,
  extension: string,
): readonly string[] {
  const detail = artworks.map(() => 0);
  for (;;) {
    const names = artworks.map((parts, index) =>
      portableName(artOf(parts, detail[index]!), `${blankId}.${extension}`),
    );
    const shared = indexesOfShared(
      artworks.map(({ folder }, index) => `${folder}\0${foldName(names[index]!)}`),
    );
    const vague = shared.filter((index) => detail[index]! < MOST_DETAIL);
    if (vague.length === 0) return names;
    for (const index of vague) detail[index]! += 1;
  }
}

const MOST_DETAIL = 3;

function artOf({ stem, extension, parent, path }: NameParts, detail: number): string {
  const parts = [
    detail >= 2 ? parent : '',
    stem,
    detail >= 1 ? extension : '',
    detail >= 3 ? shortHash(path) : '',
  ];
  return parts.filter((part) => part !== '').join('.');
}

function foldName(name: string): string {
  return name.normalize('NFC').toLowerCase();
}

function indexesOfShared(keys: readonly string[]): readonly number[] {
  const times = new Map<string, number>();
  for (const key of keys) times.set(key, (times.get(key) ?? 0) + 1);
  return keys.flatMap((key, index) => (times.get(key)! > 1 ? [index] : []));
}
