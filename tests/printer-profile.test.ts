import { deflateSync, inflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { curveTag } from '../fixtures/byte-writers/icc-tags.ts';
import { ascii, joinBytes } from '../fixtures/byte-writers/write-icc.ts';
import { writePng } from '../fixtures/byte-writers/write-png.ts';
import type { BlankcheckError } from '../src/blankcheck-error.ts';
import { deltaE2000 } from '../src/colour/delta-e-2000.ts';
import { readPngChunks } from '../src/formats/png-chunks.ts';
import { readTiffTags } from '../src/formats/tiff-tags.ts';
import { toLabD50 } from '../src/icc/lab-d50.ts';
import type { IccProfile, Intent } from '../src/icc/profile.ts';
import { readProfile } from '../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../src/icc/srgb-profile.ts';
import { makeTransform } from '../src/icc/transform.ts';
import { blankFromSize, preflight, readPrinterProfile, readPrintRecord } from '../src/index.ts';
import { makeArt } from './cli/art.ts';
import { COATED_REFERENCE } from './icc/coated-reference.ts';
import { makeGenerator } from './icc/random-colours.ts';
import { writeGrayProfile, writeMatrixProfile } from './icc/simple-profiles.ts';

const SIDE = 40;
const PPI = 300;
const next = makeGenerator(7);
/** Opaque colours, with no two neighbours alike: the corners of the cube first. */
const COLOURS = Array.from({ length: SIDE * SIDE * 3 }, (_, i) =>
  i < 24 ? ((Math.floor(i / 3) >> (i % 3)) & 1) * 255 : next() >>> 24,
);
const artIn = (profile?: Uint8Array) =>
  writePng({
    widthPx: SIDE,
    heightPx: SIDE,
    colourType: 2,
    bitDepth: 8,
    samples: COLOURS,
    chunks: profile ? [{ type: 'iCCP', data: joinBytes([ascii('wide\0\0'), deflateSync(profile)]) }] : [],
  });
const P3 = (await sharp(
  await sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } })
    .withIccProfile('p3')
    .tiff()
    .toBuffer(),
).metadata()) as { icc: Uint8Array };
const RGB_PRINTER = writeMatrixProfile(curveTag([256 * 1.8]));

/** The print-ready file of art whose pixels are copied one by one, not mirrored, and its colour samples where the art lies. */
async function prepare(
  art: Uint8Array,
  printer: Uint8Array,
  options: { intent?: Intent; blackPointCompensation?: boolean } = {},
  format?: 'png' | 'tiff',
) {
  const conversion = readPrinterProfile(printer, 'mine.icc', options);
  const widthMm = (SIDE / PPI) * 25.4;
  const request = {
    blank: blankFromSize('20x20mm'),
    surface: 'second',
    widthMm,
    conversion,
  } as const;
  const done = await preflight({ path: 'bed.png', bytes: art }, request, {
    write: true,
    anyway: true,
    ...(format ? { format } : {}),
  });
  const bytes = done.printReady!.bytes;
  const place = done.report.plan.find((step) => step.step === 'pad') as {
    x: number;
    y: number;
    widthPx: number;
  };
  const space = conversion.profile.space === 'cmyk' ? 'cmyk' : 'srgb';
  const { data, info } = await sharp(bytes, { ignoreIcc: true })
    .pipelineColourspace(space)
    .toColourspace(space)
    .raw()
    .toBuffer({ resolveWithObject: true });
  const at = (x: number, y: number) => {
    const from = (y * info.width + x) * info.channels;
    return [...data.subarray(from, from + info.channels)];
  };
  const pixels = Array.from({ length: SIDE * SIDE }, (_, i) =>
    at(place.x + (i % SIDE), place.y + Math.floor(i / SIDE)),
  );
  return { ...done, bytes, pixels, corner: at(0, 0), conversion };
}

/** dE00, in print, between the file's pixels and one exact evaluation from the art's own colours. */
function lossesOf(
  { pixels, conversion }: Awaited<ReturnType<typeof prepare>>,
  source: IccProfile,
): readonly number[] {
  const { profile } = conversion;
  const exact = makeTransform(source, profile, conversion);
  const print = (device: readonly number[]) => toLabD50(profile, device, { intent: 'relative' });
  return pixels.map((pixel, i) => {
    const device = COLOURS.slice(3 * i, 3 * i + 3).map((code) => code / 255);
    return deltaE2000(print(pixel.map((code) => code / 255)), print(exact.convert(device)));
  });
}
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('exactly one conversion is made', () => {
  // A second one, or one by way of clipped sRGB, moves colours by 3 dE00 and more on average; the grid errs by tenths.
  it.each<readonly [string, Uint8Array | undefined]>([
    ['sRGB', undefined],
    ['a wider space, which is not clipped to sRGB first', P3.icc],
  ])('from %s to the inks of a printer', async (_, own) => {
    const source = own ? readProfile(own) : SRGB_PROFILE;
    const losses = lossesOf(await prepare(artIn(own), COATED_REFERENCE), source);
    expect(mean(losses)).toBeLessThan(0.3);
    expect(Math.max(...losses)).toBeLessThan(3);
  });

  it('would be seen if it were made by way of sRGB, or twice', async () => {
    const wide = await prepare(artIn(P3.icc), COATED_REFERENCE);
    expect(mean(lossesOf(wide, SRGB_PROFILE))).toBeGreaterThan(1);
  });

  it.each(['perceptual', 'relative', 'saturation', 'absolute'] as const)(
    'by the intent %s',
    async (intent) => {
      for (const blackPointCompensation of [true, false]) {
        const made = await prepare(artIn(), COATED_REFERENCE, { intent, blackPointCompensation });
        expect(mean(lossesOf(made, SRGB_PROFILE))).toBeLessThan(0.3);
        expect(made.report.plan.find(({ step }) => step === 'convert-for-printer')).toEqual({
          step: 'convert-for-printer',
          profile: made.conversion.name,
          space: 'cmyk',
          intent,
          blackPointCompensation: blackPointCompensation && intent !== 'absolute',
        });
      }
    },
  );

  it('to the channels of an RGB printer, within a rounding', async () => {
    const { pixels, conversion } = await prepare(artIn(), RGB_PRINTER);
    const exact = makeTransform(SRGB_PROFILE, conversion.profile, conversion);
    for (const [i, pixel] of pixels.entries()) {
      const wanted = exact.convert(COLOURS.slice(3 * i, 3 * i + 3).map((code) => code / 255));
      for (const k of [0, 1, 2]) expect(Math.abs(pixel[k]! - wanted[k]! * 255)).toBeLessThanOrEqual(0.51);
    }
  });
});

describe('the file for a printer', () => {
  it('is a TIFF of four inks with the profile in it, and bare paper where nothing is', async () => {
    const { bytes, corner, pixels, report } = await prepare(artIn(), COATED_REFERENCE);
    const tags = readTiffTags(bytes)!.directories[0]!;
    expect([...tags.get(262)!.bytes]).toEqual([5, 0]);
    expect([...tags.get(277)!.bytes]).toEqual([4, 0]);
    expect(tags.has(338)).toBe(false);
    expect(Buffer.from(tags.get(34675)!.bytes).equals(Buffer.from(COATED_REFERENCE))).toBe(true);
    expect(corner).toEqual([0, 0, 0, 0]);
    expect(pixels[7]).toEqual([0, 0, 0, 0]); // the white corner of the cube
    expect(report.colours).toMatchObject({ convertedBy: 'file', space: 'cmyk', intent: 'relative' });
    expect(report.outcomes.some(({ status }) => status === 'broken')).toBe(false);
  });

  it.each(['png', 'tiff'] as const)('is a %s with the profile in it for an RGB printer', async (format) => {
    const { bytes, corner } = await prepare(artIn(), RGB_PRINTER, {}, format);
    expect(corner).toEqual([255, 255, 255]);
    if (format === 'tiff') {
      const tag = readTiffTags(bytes)!.directories[0]!.get(34675)!;
      expect(Buffer.from(tag.bytes).equals(Buffer.from(RGB_PRINTER))).toBe(true);
      return;
    }
    const chunks = readPngChunks(bytes);
    const iccp = chunks.filter(({ type }) => type === 'iCCP');
    expect(iccp).toHaveLength(1);
    expect(inflateSync(iccp[0]!.data.subarray('printer'.length + 2)).equals(Buffer.from(RGB_PRINTER))).toBe(
      true,
    );
    expect(chunks.some(({ type }) => ['sRGB', 'gAMA', 'cHRM'].includes(type))).toBe(false);
  });

  it('says of itself which profile it was converted by, and is the same every time', async () => {
    const first = await prepare(artIn(), COATED_REFERENCE);
    const { sha256, name } = first.conversion;
    expect(readPrintRecord(first.bytes)).toMatchObject({ printerProfile: { sha256, name } });
    expect(
      Buffer.from((await prepare(artIn(), COATED_REFERENCE)).bytes).equals(Buffer.from(first.bytes)),
    ).toBe(true);
  });

  it('is judged by that printer: findings are warnings', async () => {
    const { report } = await prepare(artIn(), COATED_REFERENCE);
    const gamut = report.outcomes.find(({ check }) => check === 'gamut')!;
    expect(gamut).toMatchObject({ status: 'found', findings: [{ severity: 'warning' }] });
  });

  it.each([
    ['PNG of inks', { format: 'png' }, {}],
    ['clear background under inks', {}, { background: { r: 0, g: 0, b: 0, alpha: 0 } }],
  ] as const)('is refused before a byte is read: %s', async (_, options, more) => {
    const request = {
      blank: blankFromSize('20x20mm'),
      conversion: readPrinterProfile(COATED_REFERENCE, 'mine.icc'),
      ...more,
    };
    const asked = preflight({ path: 'x', bytes: new Uint8Array(0) }, request, { write: true, ...options });
    await expect(asked).rejects.toMatchObject({ code: 'bad-option' });
  });
});

describe('readPrinterProfile', () => {
  const text = (words: string) => new TextEncoder().encode(words);
  const renamed = (from: string, to: string) => {
    const bytes = Uint8Array.from(COATED_REFERENCE);
    for (let at = 0; at < 512; at++)
      if (String.fromCharCode(...bytes.subarray(at, at + from.length)) === from) bytes.set(text(to), at);
    return bytes;
  };
  it.each<readonly [string, Uint8Array, RegExp]>([
    ['no bytes', new Uint8Array(0), /empty/],
    ['a picture', makeArt(), /PNG, a picture/],
    ['a text', text('Sow the marigolds in April.'), /a text/],
    ['20 MB', new Uint8Array(20_000_000), /20 MB/],
    ['a scanner', renamed('prtr', 'scnr'), /scanner/],
    ['no way to the inks', renamed('B2A', 'xxx'), /B2A/],
    ['no way back', renamed('A2B', 'xxx'), /A2B/],
    ['half a profile', COATED_REFERENCE.subarray(0, 60_000), /cannot be used/],
    ['gray', writeGrayProfile(curveTag([256 * 2.2]), 'XYZ '), /gray/],
  ])('refuses %s, and says what it is', (_, bytes, words) => {
    const refused = () => readPrinterProfile(bytes, 'mine.icc');
    expect(refused).toThrow(words);
    expect(refused).toThrow(
      expect.objectContaining({ code: 'bad-printer-profile', kind: 'usage' }) as BlankcheckError,
    );
  });
});
