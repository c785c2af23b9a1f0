import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { exifSegment, jfifSegment, putIntoJpeg } from '../../fixtures/byte-writers/put-into-jpeg.ts';
import { putIntoWebp } from '../../fixtures/byte-writers/put-into-webp.ts';
import { writeExif } from '../../fixtures/byte-writers/write-exif.ts';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { channelsOf } from '../../src/raster/raster.ts';
import { askWitness, requireCorpus, requireWitness } from '../witness.ts';

const image = sharp({ create: { width: 16, height: 16, channels: 3, background: '#3a7445' } });
const EXIF = writeExif({ orientation: 6, xResolution: [3001, 10], yResolution: [150, 1], resolutionUnit: 2 });

/** Files with a density and an orientation, and where exiftool finds them (EXIF directory, or the format's own place). */
const FILES = {
  'a.jpg': putIntoJpeg(await image.clone().jpeg().toBuffer(), [jfifSegment(1, 72, 72), exifSegment(EXIF)]),
  'b.webp': putIntoWebp(
    await image.clone().webp({ lossless: true }).toBuffer(),
    { widthPx: 16, heightPx: 16, hasAlpha: false },
    [{ type: 'EXIF', data: EXIF }],
  ),
  'c.png': writePng({
    widthPx: 1,
    heightPx: 1,
    colourType: 0,
    bitDepth: 8,
    samples: [7],
    chunks: [{ type: 'eXIf', data: EXIF }],
  }),
  'd.tif': writeTiff([
    {
      entries: pictureEntries({ widthPx: 1, heightPx: 1, bits: [8], photometric: 1 }, [
        { tag: 274, type: 3, values: [6] },
        { tag: 282, type: 5, values: [3001, 10] },
        { tag: 283, type: 5, values: [150, 1] },
        { tag: 296, type: 3, values: [2] },
      ]),
      pixels: Uint8Array.of(7),
    },
  ]),
};

describe('exiftool reads the same density and orientation', () => {
  it.each(Object.keys(FILES) as (keyof typeof FILES)[])('%s', async (name) => {
    await expect(readArtwork(FILES[name])).resolves.toMatchObject({
      orientation: 6,
      statedPpi: { x: 150, y: 300.1 },
    }); // axes as displayed
  });

  it('of every file', (context) => {
    requireWitness(context, 'exiftool');
    const { stdout } = askWitness(
      'exiftool',
      ['-json', '-n', '-IFD0:XResolution', '-IFD0:YResolution', '-IFD0:Orientation', '.'],
      FILES,
    );
    const answers = JSON.parse(stdout.toString()) as Record<string, unknown>[];
    expect(
      answers.map(({ XResolution, YResolution, Orientation }) => [XResolution, YResolution, Orientation]),
    ).toEqual(
      Object.keys(FILES).map(() => [300.1, 150, 6]), // axes as stored
    );
  });
});

/** Icons of Debian's adwaita-icon-theme, by path. pngjs clears hidden colour under tRNS and drops to 8 bits: those are left out. */
describe('pngjs reads the same samples of real art', () => {
  const EVERY = 40;
  it('of icons, every fortieth', async (context) => {
    const paths = requireCorpus(context, '/usr/share/icons/Adwaita', '.png').filter(
      (_, index) => index % EVERY === 0,
    );
    const different: string[] = [];
    for (const path of paths) {
      const bytes = readFileSync(path);
      const { raster, profile } = await readArtwork(bytes);
      if (raster.depth === 16 || profile.kind === 'rgb' || profile.kind === 'gray') continue;
      const rgba = PNG.sync.read(bytes).data;
      const channels = channelsOf(raster);
      const expected = (index: number) => {
        const pixel = (index >> 2) * channels;
        if ((index & 3) === 3) return raster.hasAlpha ? raster.data[pixel + channels - 1] : 255;
        return raster.data[pixel + (raster.model === 'gray' ? 0 : index & 3)];
      };
      if (!rgba.every((sample, index) => sample === expected(index))) different.push(path);
    }
    expect(different).toEqual([]);
  });
});
