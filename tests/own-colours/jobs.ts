import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { curveTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { ascii, joinBytes } from '../../fixtures/byte-writers/write-icc.ts';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import type { TransformOptions } from '../../src/icc/adjustment.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import type { IccProfile } from '../../src/icc/profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { blankFromSize, preflight, readPrinterProfile } from '../../src/index.ts';
import { randomColours } from '../icc/random-colours.ts';
import { writeMatrixProfile } from '../icc/simple-profiles.ts';
import { TABLE_PROFILES } from '../icc/table-profiles.ts';
import { writeTableProfile } from '../icc/write-table-profile.ts';

export const SIDE = 24;
export const PPI = 300;
export const COUNT = SIDE * SIDE;
export const WAY = { intent: 'relative', blackPointCompensation: true } as const;

async function builtIn(name: 'p3' | 'cmyk'): Promise<Uint8Array> {
  const tagged = sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } });
  return (await sharp(await tagged.withIccProfile(name).tiff().toBuffer()).metadata()).icc!;
}
export const [P3, PRESS] = [await builtIn('p3'), await builtIn('cmyk')];
export const RGB_PRINTER = writeMatrixProfile(curveTag([256 * 1.8]));
export const RGB_TABLE = writeTableProfile(
  TABLE_PROFILES.find(({ space, connection }) => space === 'RGB ' && connection === 'Lab ')!,
);

/** Colours of so many channels, no two neighbours alike, in codes. */
export const codesOf = (channels: number, full = 255) =>
  randomColours(11, COUNT, channels).flatMap((colour) => colour.map((value) => Math.round(value * full)));
/** As separations have them, up to 280 % in all. */
export const INKS = randomColours(11, COUNT, 4).flatMap((inks) => {
  const scale = Math.min(1, 2.8 / inks.reduce((sum, ink) => sum + ink, 0));
  return inks.map((ink) => Math.floor(ink * scale * 255));
});

export const cmykArt = (profile?: Uint8Array) =>
  writeTiff([
    {
      entries: pictureEntries(
        { widthPx: SIDE, heightPx: SIDE, bits: [8, 8, 8, 8], photometric: 5 },
        profile ? [{ tag: 34675, type: 7, values: [...profile] }] : [],
      ),
      pixels: Uint8Array.from(INKS),
    },
  ]);
export const rgbArt = (
  profile: Uint8Array,
  samples: readonly number[],
  shape: { bitDepth?: 8 | 16; alpha?: boolean } = {},
) =>
  writePng({
    widthPx: SIDE,
    heightPx: SIDE,
    colourType: shape.alpha ? 6 : 2,
    bitDepth: shape.bitDepth ?? 8,
    samples,
    chunks: [{ type: 'iCCP', data: joinBytes([ascii('own\0\0'), deflateSync(profile)]) }],
  });

/** The print-ready file of art whose pixels are copied one by one, not mirrored, and its samples where the art lies. */
export async function prepare(
  art: Uint8Array,
  printer: Uint8Array,
  {
    background,
    proof,
    way = {},
  }: {
    background?: { r: number; g: number; b: number; alpha: 0 | 1 };
    proof?: boolean;
    way?: Partial<TransformOptions>;
  } = {},
) {
  const conversion = readPrinterProfile(printer, 'mine.icc', way);
  const request = {
    blank: blankFromSize('20x20mm'),
    surface: 'second',
    widthMm: (SIDE / PPI) * 25.4,
    conversion,
    ...(background ? { background } : {}),
  } as const;
  const done = await preflight({ path: 'bed', bytes: art }, request, {
    write: true,
    anyway: true,
    ...(proof ? { proof: { mark: false } } : {}),
  });
  const { bytes } = done.printReady!;
  const { x, y } = done.report.plan.find((step) => step.step === 'pad')!;
  const space = conversion.profile.space === 'cmyk' ? 'cmyk' : 'srgb';
  const read = sharp(bytes, { ignoreIcc: true }).pipelineColourspace(space).toColourspace(space).raw();
  const { data, info } = await read.toBuffer({ resolveWithObject: true });
  const at = (column: number, row: number) => {
    const from = (row * info.width + column) * info.channels;
    return [...data.subarray(from, from + info.channels)];
  };
  const pixels = Array.from({ length: COUNT }, (_, i) => at(x + (i % SIDE), y + Math.floor(i / SIDE)));
  return { ...done, bytes, pixels, corner: at(0, 0), conversion };
}
export type Prepared = Awaited<ReturnType<typeof prepare>>;

/** dE00 in print between the file's pixels and device values, 0…1, of someone else. */
export const lossesOf = (
  { pixels, conversion: { profile } }: Prepared,
  wanted: readonly (readonly number[])[],
) =>
  pixels.map((pixel, i) => {
    const print = (device: readonly number[]) => toLabD50(profile, device, { intent: 'relative' });
    return deltaE2000(print(pixel.map((code) => code / 255)), print(wanted[i]!));
  });
export const summary = (losses: readonly number[]) => ({
  mean: losses.reduce((sum, loss) => sum + loss, 0) / losses.length,
  p95: [...losses].sort((a, b) => a - b)[Math.floor(losses.length * 0.95)]!,
});
export const coloursOf = (codes: readonly number[], channels: number, full = 255) =>
  Array.from({ length: codes.length / channels }, (_, i) =>
    codes.slice(i * channels, (i + 1) * channels).map((code) => code / full),
  );
export const exactly = (
  source: IccProfile,
  { conversion }: Prepared,
  colours: readonly (readonly number[])[],
) => {
  const transform = makeTransform(source, conversion.profile, conversion);
  return colours.map((colour) => transform.convert(colour));
};
