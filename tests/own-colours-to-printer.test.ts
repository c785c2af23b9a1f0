import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { curveTag } from '../fixtures/byte-writers/icc-tags.ts';
import { ascii, joinBytes } from '../fixtures/byte-writers/write-icc.ts';
import { writePng } from '../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../fixtures/byte-writers/write-tiff.ts';
import { deltaE2000 } from '../src/colour/delta-e-2000.ts';
import { toLabD50 } from '../src/icc/lab-d50.ts';
import type { IccProfile } from '../src/icc/profile.ts';
import { makeProofTable } from '../src/icc/proof-table.ts';
import { readProfile } from '../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../src/icc/srgb-profile.ts';
import { makeTransform } from '../src/icc/transform.ts';
import { WIDE_PROFILE } from '../src/icc/wide-profile.ts';
import { blankFromSize, preflight, readPrinterProfile, readPrintRecord } from '../src/index.ts';
import { COATED_REFERENCE } from './icc/coated-reference.ts';
import { askLcms } from './icc/engines.ts';
import { randomColours } from './icc/random-colours.ts';
import { writeMatrixProfile } from './icc/simple-profiles.ts';
import { TABLE_PROFILES } from './icc/table-profiles.ts';
import { writeTableProfile } from './icc/write-table-profile.ts';
import { requireWitness } from './witness.ts';

const SIDE = 24;
const PPI = 300;
const COUNT = SIDE * SIDE;
const WAY = { intent: 'relative', blackPointCompensation: true } as const;

async function builtIn(name: 'p3' | 'cmyk'): Promise<Uint8Array> {
  const tagged = sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } });
  return (await sharp(await tagged.withIccProfile(name).tiff().toBuffer()).metadata()).icc!;
}
const [P3, PRESS] = [await builtIn('p3'), await builtIn('cmyk')];
const RGB_PRINTER = writeMatrixProfile(curveTag([256 * 1.8]));
const RGB_TABLE = writeTableProfile(
  TABLE_PROFILES.find(({ space, connection }) => space === 'RGB ' && connection === 'Lab ')!,
);

/** Colours of so many channels, no two neighbours alike, in codes. */
const codesOf = (channels: number, full = 255) =>
  randomColours(11, COUNT, channels).flatMap((colour) => colour.map((value) => Math.round(value * full)));
/** As separations have them, up to 280 % in all. */
const INKS = randomColours(11, COUNT, 4).flatMap((inks) => {
  const scale = Math.min(1, 2.8 / inks.reduce((sum, ink) => sum + ink, 0));
  return inks.map((ink) => Math.floor(ink * scale * 255));
});

const cmykArt = (profile?: Uint8Array) =>
  writeTiff([
    {
      entries: pictureEntries(
        { widthPx: SIDE, heightPx: SIDE, bits: [8, 8, 8, 8], photometric: 5 },
        profile ? [{ tag: 34675, type: 7, values: [...profile] }] : [],
      ),
      pixels: Uint8Array.from(INKS),
    },
  ]);
const rgbArt = (
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
async function prepare(
  art: Uint8Array,
  printer: Uint8Array,
  {
    background,
    proof,
  }: { background?: { r: number; g: number; b: number; alpha: 0 | 1 }; proof?: boolean } = {},
) {
  const conversion = readPrinterProfile(printer, 'mine.icc');
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
type Prepared = Awaited<ReturnType<typeof prepare>>;

/** dE00 in print between the file's pixels and device values, 0…1, of someone else. */
const lossesOf = ({ pixels, conversion: { profile } }: Prepared, wanted: readonly (readonly number[])[]) =>
  pixels.map((pixel, i) => {
    const print = (device: readonly number[]) => toLabD50(profile, device, { intent: 'relative' });
    return deltaE2000(print(pixel.map((code) => code / 255)), print(wanted[i]!));
  });
const summary = (losses: readonly number[]) => ({
  mean: losses.reduce((sum, loss) => sum + loss, 0) / losses.length,
  p95: [...losses].sort((a, b) => a - b)[Math.floor(losses.length * 0.95)]!,
});
const coloursOf = (codes: readonly number[], channels: number, full = 255) =>
  Array.from({ length: codes.length / channels }, (_, i) =>
    codes.slice(i * channels, (i + 1) * channels).map((code) => code / full),
  );
const exactly = (source: IccProfile, { conversion }: Prepared, colours: readonly (readonly number[])[]) => {
  const transform = makeTransform(source, conversion.profile, WAY);
  return colours.map((colour) => transform.convert(colour));
};

/** What one stop in sRGB, which clips, would cost on average, by exact evaluation. */
function byWayOfSrgb(source: IccProfile, made: Prepared, colours: readonly (readonly number[])[]): number {
  const { profile } = made.conversion;
  const print = (device: readonly number[]) => toLabD50(profile, device, { intent: 'relative' });
  const toSrgb = makeTransform(source, SRGB_PROFILE, WAY);
  const wanted = exactly(source, made, colours);
  const clipped = exactly(
    SRGB_PROFILE,
    made,
    colours.map((colour) => toSrgb.convert(colour)),
  );
  return summary(wanted.map((device, i) => deltaE2000(print(device), print(clipped[i]!)))).mean;
}

/** Two grids lie in the way, between whose nodes colours are interpolated: single near-blacks (a black ink of 97 %) stray by up to 12 dE00. */
const CASES = [
  ['CMYK art to another printer’s inks', cmykArt(PRESS), PRESS, INKS, 4, COATED_REFERENCE],
  ['CMYK art without a profile to RGB', cmykArt(), COATED_REFERENCE, INKS, 4, RGB_PRINTER],
  ['RGB art of a table to inks', rgbArt(RGB_TABLE, codesOf(3)), RGB_TABLE, codesOf(3), 3, COATED_REFERENCE],
] as const;

describe('art in a space of tables reaches the printer in one conversion, unclipped', () => {
  it.each(CASES)('%s, against exact evaluation', async (_, art, own, codes, channels, printer) => {
    const made = await prepare(art, printer);
    const source = readProfile(own);
    const { mean, p95 } = summary(lossesOf(made, exactly(source, made, coloursOf(codes, channels))));
    expect(mean).toBeLessThan(0.8);
    expect(p95).toBeLessThan(2.5);
    expect(made.report.plan.some(({ step }) => step === 'convert')).toBe(false);
  });

  it.for(CASES)('%s, against Little CMS', async ([, art, own, codes, channels, printer], context) => {
    requireWitness(context, 'transicc');
    const made = await prepare(art, printer);
    const scale = channels === 4 ? 100 : 255;
    const theirs = askLcms(
      { from: 'own.icc', to: 'printer.icc', ...WAY, files: { 'own.icc': own, 'printer.icc': printer } },
      coloursOf(codes, channels).map((colour) => colour.map((value) => value * scale)),
    );
    const full = made.conversion.profile.space === 'cmyk' ? 100 : 255;
    const { mean, p95 } = summary(
      lossesOf(
        made,
        theirs.map((colour) => colour.map((value) => value / full)),
      ),
    );
    expect(mean).toBeLessThan(1);
    expect(p95).toBeLessThan(3);
  });

  it('would be seen if it went by way of sRGB, which clips', async () => {
    const [, art, own, codes, channels, printer] = CASES[2];
    const made = await prepare(art, printer);
    expect(byWayOfSrgb(readProfile(own), made, coloursOf(codes, channels))).toBeGreaterThan(5);
  });

  it('is within the working space: no ink of the reference lies outside it', () => {
    const press = readProfile(COATED_REFERENCE);
    const back = makeTransform(WIDE_PROFILE, WIDE_PROFILE, WAY);
    const into = makeTransform(press, WIDE_PROFILE, WAY);
    for (const inks of randomColours(5, 500, 4)) {
      const wide = into.convert(inks.map(Math.round));
      expect(Math.max(...wide)).toBeLessThanOrEqual(1);
      expect(back.convert(wide)).toEqual(wide.map((value) => expect.closeTo(value, 6)));
    }
  });

  it('is not clipped before it is judged: the reference can print its own inks', async () => {
    const { report } = await prepare(cmykArt(), COATED_REFERENCE);
    const gamut = report.outcomes.find(({ check }) => check === 'gamut')!;
    expect(gamut.status).toBe('passed');
  });
});

describe('art in the colours of the very printer', () => {
  const samples = codesOf(3);
  it('goes through as it is, and the report says so', async () => {
    const { pixels, report } = await prepare(rgbArt(RGB_TABLE, samples), RGB_TABLE);
    expect(pixels.flat()).toEqual(samples);
    expect(report.colours).toMatchObject({ convertedBy: 'file', unchanged: true });
    expect(report.plan.some(({ step }) => step.startsWith('convert'))).toBe(false);
    const found = report.outcomes.find(({ check }) => check === 'embedded-profile');
    expect(found).toMatchObject({ findings: [{ code: 'printer-profile', facts: { samePrinter: true } }] });
  });

  it('is found where inks are mixed anew', async () => {
    const { report } = await prepare(cmykArt(COATED_REFERENCE), COATED_REFERENCE);
    const found = report.outcomes.find(({ check }) => check === 'embedded-profile');
    expect(found).toMatchObject({ findings: [{ code: 'device-cmyk', facts: { samePrinter: true } }] });
    expect(report.colours).not.toHaveProperty('unchanged');
  });
});

describe('wide art of 16 bits', () => {
  const deep = codesOf(3, 65535);
  /** Every other column but the last, so that the art is as wide as its file. */
  const isClear = (i: number) => i % 2 === 1 && i % SIDE !== SIDE - 1;
  it('reaches the conversion unrounded', async () => {
    const made = await prepare(rgbArt(P3, deep, { bitDepth: 16 }), RGB_PRINTER);
    const colours = coloursOf(deep, 3, 65535);
    const source = readProfile(P3);
    const wanted = exactly(source, made, colours);
    for (const [i, pixel] of made.pixels.entries())
      for (const k of [0, 1, 2]) expect(Math.abs(pixel[k]! - wanted[i]![k]! * 255)).toBeLessThanOrEqual(0.51);
    // What rounding to 8 bits on the way would cost, before the file itself is rounded.
    const rounded = colours.map((colour) => colour.map((value) => Math.round(value * 255) / 255));
    const print = (device: readonly number[]) =>
      toLabD50(made.conversion.profile, device, { intent: 'relative' });
    const losses = exactly(source, made, rounded).map((device, i) =>
      deltaE2000(print(device), print(wanted[i]!)),
    );
    expect(Math.max(...losses)).toBeGreaterThan(0.1);
  });

  it('keeps its alpha over a clear background, and lies on a coloured one in one conversion', async () => {
    const half = coloursOf(deep, 3, 1).flatMap((colour, i) => [...colour, isClear(i) ? 0 : 65535]);
    const art = rgbArt(P3, half, { bitDepth: 16, alpha: true });
    const clear = await prepare(art, RGB_PRINTER, { background: { r: 0, g: 0, b: 0, alpha: 0 } });
    expect(clear.corner[3]).toBe(0);
    expect(clear.pixels.map((pixel) => pixel[3])).toEqual(clear.pixels.map((_, i) => (isClear(i) ? 0 : 255)));
    const green = [20, 160, 60] as const;
    const background = { r: green[0], g: green[1], b: green[2], alpha: 1 } as const;
    const laid = await prepare(art, RGB_PRINTER, { background });
    const onSrgb = exactly(SRGB_PROFILE, laid, [green.map((code) => code / 255)])[0]!;
    for (const k of [0, 1, 2]) {
      expect(Math.abs(laid.corner[k]! - onSrgb[k]! * 255)).toBeLessThanOrEqual(0.6);
      expect(laid.pixels[1]![k]).toBe(laid.corner[k]);
      expect(laid.pixels[0]![k]).toBe(clear.pixels[0]![k]);
    }
  });
});

describe('beside the file', () => {
  it('the proof shows what the printer makes of the art’s own colours, not of clipped ones', async () => {
    const samples = Array.from({ length: COUNT }, () => [0, 255, 0]).flat();
    const { proof } = await prepare(rgbArt(P3, samples), COATED_REFERENCE, { proof: true });
    const table = makeProofTable(readProfile(COATED_REFERENCE), readProfile(P3));
    const wanted = table.convert([0, 1, 0]).map((value) => Math.round(value * 255));
    const { data, info } = await sharp(proof!.bytes).raw().toBuffer({ resolveWithObject: true });
    const middle = (info.width >> 1) + info.width * Math.round(((3 + 10) / 25.4) * PPI);
    const seen = [...data.subarray(middle * info.channels, middle * info.channels + 3)];
    for (const k of [0, 1, 2]) expect(Math.abs(seen[k]! - wanted[k]!)).toBeLessThanOrEqual(2);
  });

  it('the record says by which intent it was converted, and whether with compensation', async () => {
    const { bytes, report } = await prepare(cmykArt(), RGB_PRINTER);
    expect(readPrintRecord(bytes)?.printerProfile).toMatchObject(WAY);
    expect(report.colours).toMatchObject(WAY);
    expect(report.outcomes.find(({ check }) => check === 'embedded-profile')).toMatchObject({
      findings: [{ facts: { convertedTo: readPrinterProfile(RGB_PRINTER, 'mine.icc').name } }],
    });
  });
});
