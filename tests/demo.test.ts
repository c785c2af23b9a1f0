import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { findBlank, preflight } from '../src/index.ts';

interface Drawing {
  readonly widthPx: number;
  readonly heightPx: number;
  toSvg(): string;
}
interface DemoArtwork {
  readonly name: string;
  readonly blank: string;
  readonly options: readonly string[];
  readonly ppi: number;
  draw(): Drawing;
}

// The demo is plain JavaScript, so that it runs without a build: its types are given here.
const list = join(fileURLToPath(new URL('.', import.meta.url)), '../fixtures/demo/artworks/list.mjs');
const { artworks } = (await import(pathToFileURL(list).href)) as { artworks: readonly DemoArtwork[] };

const byName = (name: string) => artworks.find((artwork) => artwork.name === name)!;
const asPng = (artwork: DemoArtwork) =>
  sharp(Buffer.from(artwork.draw().toSvg())).withDensity(artwork.ppi).png({ compressionLevel: 1 }).toBuffer();

describe.each(artworks)('demo art $name', (artwork) => {
  it('is drawn alike twice, without fonts and without anything from outside', () => {
    const svg = artwork.draw().toSvg();
    expect(artwork.draw().toSvg()).toBe(svg);
    expect(svg).not.toMatch(/<text|<image|href|font|NaN|undefined/);
  });
});

describe('the demo does what it shows', () => {
  it('the tile is ready at 7 inches, and its stated density agrees', async () => {
    const tile = byName('shed-tile');
    const bytes = await asPng(tile);
    const request = { blank: findBlank(tile.blank)!, widthMm: 177.8 };
    const { report } = await preflight({ path: 'shed-tile.png', bytes }, request, { write: false });
    const found = report.outcomes.flatMap((outcome) => (outcome.status === 'found' ? [outcome.check] : []));
    expect(report.status).toBe('ready');
    expect(found).toEqual(['transparent-margin']);
  });

  it('the wreath leaves the hole of its tag free', async () => {
    const tag = byName('tag-wreath');
    const request = { blank: findBlank(tag.blank)! };
    const { report } = await preflight({ path: 'tag.png', bytes: await asPng(tag) }, request, {
      write: false,
    });
    expect(report.outcomes.find(({ check }) => check === 'keep-out')?.status).toBe('passed');
    expect(report.status).toBe('ready');
  });

  it('the coaster covers its blank and the bleed', async () => {
    const coaster = byName('coaster-leaves');
    const request = { blank: findBlank(coaster.blank)!, fit: 'cover' as const };
    const { report } = await preflight({ path: 'c.png', bytes: await asPng(coaster) }, request, {
      write: false,
    });
    expect(report.outcomes.find(({ check }) => check === 'bleed-cover')?.status).toBe('passed');
    expect(report.status).toBe('ready');
  });
});
