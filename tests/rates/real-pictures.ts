import { closeSync, openSync, readdirSync, readSync } from 'node:fs';
import { join } from 'node:path';

/** Where the pictures come from: Debian packages; every so many by sorted path, so that a list is the same everywhere. */
const CORPORA = [
  { name: 'openclipart-png', folder: '/usr/share/openclipart/png', every: 22 },
  { name: 'tuxpaint-stamps-default', folder: '/usr/share/tuxpaint/stamps', every: 6 },
  { name: 'adwaita-icon-theme', folder: '/usr/share/icons/Adwaita/512x512', every: 4 },
] as const;

/** A few posters would take longer than all the rest. */
const MOST_MEGAPIXELS = 30;

export interface RealPicture {
  /** `<package>/<path below its folder>`: stands for it in the judgements. */
  readonly name: string;
  readonly path: string;
}

/** The pictures of the packages that are installed, and a line about each. */
export function listRealPictures(): {
  readonly pictures: readonly RealPicture[];
  readonly packages: readonly string[];
} {
  const packages: string[] = [];
  const pictures = CORPORA.flatMap(({ name, folder, every }) => {
    const all = listPngs(folder);
    const own = all
      .filter((_, i) => i % every === 0)
      .filter((path) => megapixelsOf(join(folder, path)) <= MOST_MEGAPIXELS);
    if (own.length > 0)
      packages.push(
        `${name}: ${own.length} of ${all.length}, every ${every}th by sorted path, of at most ${MOST_MEGAPIXELS} megapixels`,
      );
    return own.map((path) => ({ name: `${name}/${path}`, path: join(folder, path) }));
  });
  return { pictures, packages };
}

function listPngs(folder: string): string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.png'))
      .sort();
  } catch {
    return [];
  }
}

/** From the header alone: width and height stand at a fixed place of every PNG (ISO/IEC 15948, 11.2.2). */
function megapixelsOf(path: string): number {
  const header = Buffer.alloc(24);
  const file = openSync(path, 'r');
  readSync(file, header, 0, 24, 0);
  closeSync(file);
  return (header.readUInt32BE(16) * header.readUInt32BE(20)) / 1e6;
}
