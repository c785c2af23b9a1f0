import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Sharp } from 'sharp';

/** A drawing of the demo, before it is painted. */
export interface DemoDrawing {
  readonly widthPx: number;
  readonly heightPx: number;
  toSvg(): string;
}

export interface DemoArtwork {
  readonly name: string;
  readonly blank: string;
  /** Words for the command line. */
  readonly options: readonly string[];
  readonly ppi: number;
  draw(): DemoDrawing;
}

// The demo is plain JavaScript, so that it runs without a build: its types are given here.
const folder = join(fileURLToPath(new URL('.', import.meta.url)), '../fixtures/demo');
const load = async (file: string): Promise<unknown> => import(pathToFileURL(join(folder, file)).href);

export const { artworks: demoArtworks } = (await load('artworks/list.mjs')) as {
  readonly artworks: readonly DemoArtwork[];
};
const { paint } = (await load('drawing/paint.mjs')) as { paint(drawing: DemoDrawing): Promise<Sharp> };

export function demoArtwork(name: string): DemoArtwork {
  const found = demoArtworks.find((artwork) => artwork.name === name);
  if (found === undefined) throw new Error(`Expected an artwork of the demo, received ${name}`);
  return found;
}

/** The artwork as the demo writes it, but for its compression. */
export async function paintDemo({ draw, ppi }: DemoArtwork): Promise<Sharp> {
  return (await paint(draw())).withIccProfile('srgb').withDensity(ppi).png({ compressionLevel: 1 });
}
