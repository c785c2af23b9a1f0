import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { TestContext } from 'vitest';
import type { Raster } from '../src/raster/raster.ts';
import { askWitness, requireCorpus, requireWitness } from './witness.ts';

/** Real art: the icons of Debian's adwaita-icon-theme, by path. Every nth keeps a run under a few seconds. */
const ART = '/usr/share/icons/Adwaita';
const EVERY = 300;

export interface Picture {
  readonly path: string;
  readonly raster: Raster;
}

/** Straight RGBA of a sample of the art; skips the running test where the art or ImageMagick is not installed. */
export async function readArt(context: TestContext): Promise<Picture[]> {
  requireWitness(context, 'convert');
  const paths = requireCorpus(context, ART, '.png').filter((_, index) => index % EVERY === 0);
  return Promise.all(
    paths.map(async (path) => {
      const { data, info } = await sharp(readFileSync(path), { ignoreIcc: true })
        .toColourspace('srgb')
        .ensureAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const { width: widthPx, height: heightPx } = info;
      return { path, raster: { widthPx, heightPx, model: 'rgb', hasAlpha: true, depth: 8, data } } as const;
    }),
  );
}

/** Straight RGBA of the file after ImageMagick's own operations. */
export function convert(path: string, ...operations: string[]): Buffer {
  const { status, stdout, stderr } = askWitness('convert', [
    path,
    '-alpha',
    'set',
    ...operations,
    '-depth',
    '8',
    'rgba:-',
  ]);
  if (status !== 0) throw new Error(stderr);
  return stdout;
}
