import { describe, expect, it } from 'vitest';
import { readBestFormat } from '../../../cli/inputs/choose-format.ts';
import { planInputs } from '../../../cli/inputs/plan-inputs.ts';
import { createArtworkReader } from '../../../cli/inputs/read-artworks.ts';
import { writePng } from '../../../fixtures/byte-writers/write-png.ts';
import { writeZip, type ZipEntryRecipe } from '../../../fixtures/byte-writers/write-zip.ts';
import { makeFolder } from '../temp-folder.ts';

const never = new AbortController().signal;
const noInput = { isTTY: false, stop: () => undefined, async *[Symbol.asyncIterator]() {} };

/** A picture of `sidePx` squared, of which the first `visible` pixels are there; 16 bit, so that alpha 1 is 0 in 8 bit. */
function art(sidePx: number, visible: number, alpha = 65535): Uint8Array {
  const samples = Array.from({ length: sidePx * sidePx }, (_, i) => [
    9000,
    30000,
    15000,
    i < visible ? alpha : 0,
  ]);
  return writePng({
    widthPx: sidePx,
    heightPx: sidePx,
    colourType: 6,
    bitDepth: 16,
    samples: samples.flat(),
  });
}

const svg = (inner: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="20" height="20"><rect width="20" height="20" fill="#284"/>${inner}</svg>`;
const PLAIN = svg('');
const WITH_TEXT = svg('<text x="1" y="9">Beans</text>');
const WITH_OUTSIDE = svg('<image href="bean.png" width="5" height="5"/>');
const CUT_OFF = art(40, 1600).subarray(0, 90);

/** What is read of a ZIP of these entries: each artwork with its others, how many are passed over, which were read. */
async function chosenOf(entries: Readonly<Record<string, Uint8Array | string>> | readonly ZipEntryRecipe[]) {
  const recipes = Array.isArray(entries)
    ? (entries as readonly ZipEntryRecipe[])
    : Object.entries(entries).map(([name, content]) => ({ name, content }));
  const cwd = makeFolder({ 'pack.zip': writeZip(recipes) });
  const { planned } = await planInputs(['pack.zip'], { cwd, recursive: false, signal: never });
  const inner = createArtworkReader(noInput, never);
  const reads: string[] = [];
  const reader = {
    read: (artwork: Parameters<typeof inner.read>[0]) => {
      reads.push(artwork.path.slice('pack.zip/'.length));
      return inner.read(artwork);
    },
  };
  const chosen: string[] = [];
  for (const artwork of planned[0]!.artworks) {
    const read = await readBestFormat(artwork, reader, { limits: {}, signal: never }).catch((error) => error);
    if ('code' in read) chosen.push(`${artwork.path.slice('pack.zip/'.length)}: ${read.code}`);
    else {
      const beside = read.insteadOf.map((name: string) =>
        read.unreadableBeside.includes(name) ? `${name}!` : name,
      );
      chosen.push([read.artwork.path.slice('pack.zip/'.length), ...beside].join(' < '));
    }
  }
  return { chosen, passedOver: planned[0]!.passedOver, reads };
}

describe('several formats of one artwork in a ZIP', () => {
  it('are one artwork by folder and stem, and a drawing without text is taken with no other read', async () => {
    const entries = { 'a/bean.png': art(40, 1600), 'a/bean.svg': PLAIN, 'b/bean.png': art(8, 64) };
    const { chosen, passedOver, reads } = await chosenOf({ ...entries, 'a/pea.png': art(8, 64) });
    expect(chosen).toEqual(['a/bean.svg < bean.png', 'a/pea.png', 'b/bean.png']);
    expect(passedOver).toBe(0);
    expect(reads).toEqual(['a/bean.svg', 'a/pea.png', 'b/bean.png']);
  });

  it.each([
    ['text', WITH_TEXT],
    ['outside references', WITH_OUTSIDE],
  ])('are the picture where the drawing has %s', async (_, drawing) => {
    expect((await chosenOf({ 'bean.svg': drawing, 'bean.png': art(8, 1) })).chosen).toEqual([
      'bean.png < bean.svg',
    ]);
  });

  it('are the drawing with text where no picture is whole', async () => {
    expect((await chosenOf({ 'bean.svg': WITH_TEXT, 'bean.png': CUT_OFF })).chosen).toEqual([
      'bean.svg < bean.png!',
    ]);
  });

  it('are the one with the most visible pixels, not the largest', async () => {
    const { chosen } = await chosenOf({ 'bean.PNG': art(40, 99), 'bean.png': art(10, 100) });
    expect(chosen).toEqual(['bean.png < bean.PNG']);
    expect((await chosenOf({ 'bean.PNG': art(40, 101), 'bean.png': art(10, 100) })).chosen).toEqual([
      'bean.PNG < bean.png',
    ]);
  });

  it('count alpha above 0 at their own depth', async () => {
    const { chosen } = await chosenOf({ 'bean.PNG': art(12, 144, 1), 'bean.png': art(11, 121) });
    expect(chosen).toEqual(['bean.PNG < bean.png']);
  });

  it('are the first in the stated order where they show the same, and the other is not even read', async () => {
    // Content decides the format: the name alone makes it .jpg.
    const { chosen, reads } = await chosenOf({ 'bean.jpg': art(10, 100), 'bean.png': art(10, 100) });
    expect(chosen).toEqual(['bean.png < bean.jpg']);
    expect(reads).toEqual(['bean.png']);
  });

  it('leave unread what its header says cannot win', async () => {
    const { reads } = await chosenOf({ 'bean.png': art(9, 81), 'bean.webp': art(20, 400) });
    expect(reads).toEqual(['bean.webp']);
  });

  it('are the whole one where the better is cut off or has a wrong check sum', async () => {
    expect((await chosenOf({ 'bean.png': CUT_OFF, 'bean.webp': art(8, 3) })).chosen).toEqual([
      'bean.webp < bean.png!',
    ]);
    const wrong = { name: 'bean.svg', content: PLAIN, crc32: 1 };
    expect((await chosenOf([wrong, { name: 'bean.png', content: art(8, 3) }])).chosen).toEqual([
      'bean.png < bean.svg!',
    ]);
  });

  it('are one unreadable artwork where none is whole', async () => {
    const wrong = (name: string) => ({ name, content: PLAIN, crc32: 1 });
    const { chosen, passedOver } = await chosenOf([wrong('bean.svg'), wrong('bean.png')]);
    expect(chosen).toEqual(['bean.svg: archive-damaged']);
    expect(passedOver).toBe(0);
  });

  it('never hide a dangerous entry', async () => {
    const link = { name: 'bean.svg', content: 'bean.png', externalAttributes: 0o120777 * 0x10000 };
    const { chosen, passedOver } = await chosenOf([link, { name: 'bean.png', content: art(8, 64) }]);
    expect(chosen).toEqual(['bean.png', 'bean.svg: archive-entry-refused']);
    expect(passedOver).toBe(0);
  });
});
