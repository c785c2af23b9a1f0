// What colours cost: the tables of a condition, and the conversion of the print-ready file by a printer's profile.

import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import sharp from 'sharp';
import { findBlank, preflight, readPrinterProfile } from '../../dist/src/index.js';
import { median, row, runNode, timeInTurn } from './measure.mjs';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const PROFILE = here('../../seeds/conditions/coated-reference.icc');

/** The engine in one file, as the package has it, but with its inner doors open. */
async function bundleEngine() {
  const outfile = join(tmpdir(), 'blankcheck-bench', 'engine.mjs');
  const entries = [
    'icc/read-profile',
    'icc/srgb-profile',
    'conditions/colour-tables',
    'conditions/printer-conversion',
  ];
  await build({
    stdin: {
      contents: entries.map((entry) => `export * from './${entry}.ts';`).join('\n'),
      resolveDir: here('../../src'),
    },
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    outfile,
    logLevel: 'warning',
  });
  return outfile;
}

/**
 * `photo`: 8-bit samples as the imaging library gives them, and the file they come from. `decodeMs`: what decoding it
 * takes in the same run.
 */
export async function colourRows(photo, decodeMs, rounds) {
  return [...(await engineRows(photo, decodeMs, rounds)), ...(await jobRows(photo.path, decodeMs, rounds))];
}

/** What is asked for beside the plain job, above it. */
async function jobRows(path, decodeMs, rounds) {
  const bytes = readFileSync(path);
  const plain = { blank: findBlank('tile-ceramic-8in'), widthMm: 178 };
  const conversion = readPrinterProfile(readFileSync(PROFILE), 'printer.icc');
  const run = (request, options) => () =>
    preflight({ path, bytes }, { ...plain, ...request }, { write: true, ...options });
  const ms = await timeInTurn(
    {
      plain: run(),
      proof: run({}, { proof: { mark: true } }),
      mend: run({ mends: ['into-gamut'] }),
      inks: run({ conversion }, { format: 'tiff' }),
    },
    rounds,
  );
  console.log(
    'jobs',
    Object.fromEntries(Object.entries(ms).map(([name, value]) => [name, Math.round(value)])),
  );
  const peaks = Array.from({ length: 3 }, () => Number(runNode([here('peak-memory.mjs'), path, 'colours'])));
  const { width, height, channels } = await sharp(bytes).metadata();
  return [
    row('a marked proof beside the file / decode', (ms.proof - ms.plain) / decodeMs),
    row('--mend into-gamut / decode', (ms.mend - ms.plain) / decodeMs),
    row('a TIFF of inks instead of the PNG / decode', (ms.inks - ms.plain) / decodeMs),
    row(
      'peak memory of mend, inks and proof together, above idle / decoded picture',
      median(peaks) / (width * height * channels),
    ),
  ];
}

async function engineRows(photo, decodeMs, rounds) {
  const engine = await bundleEngine();
  const { readProfile, SRGB_PROFILE, gamutTableOf, lightnessTableOf, printerTransform } = await import(
    pathToFileURL(engine).href
  );
  const cold = Array.from({ length: rounds }, () =>
    Number(runNode([here('cold-tables.mjs'), engine, PROFILE])),
  );
  const condition = readProfile(readFileSync(PROFILE));
  gamutTableOf(condition, SRGB_PROFILE);
  const again = performance.now();
  gamutTableOf(condition, SRGB_PROFILE);
  lightnessTableOf(condition, SRGB_PROFILE);
  const againMs = performance.now() - again;
  console.log('tables of a condition', { coldMs: cold.map(Math.round), againMs });
  const { data, info } = photo;
  const pixels = info.width * info.height;
  const conversion = {
    profile: condition,
    intent: 'relative',
    blackPointCompensation: true,
  };
  const transform = printerTransform(conversion, SRGB_PROFILE);
  const inks = new Uint8Array(pixels * 4);
  const ms = await timeInTurn(
    {
      own: () => transform.convert8(data, inks, pixels, info.channels),
      lcms: () => sharp(data, { raw: info }).withIccProfile(PROFILE).tiff({ compression: 'none' }).toBuffer(),
      noConversion: () => sharp(data, { raw: info }).tiff({ compression: 'none' }).toBuffer(),
    },
    rounds,
  );
  console.log(
    'conversion',
    Object.fromEntries(Object.entries(ms).map(([name, value]) => [name, Math.round(value)])),
  );
  return [
    row("tables of a user's own profile, cold, seconds", median(cold) / 1000, 0.3),
    row("tables of a user's own profile, cold / decode", median(cold) / decodeMs),
    row('conversion by a table, megapixels a second', pixels / 1000 / ms.own, 30, 'at least'),
    row(
      'conversion by a table / by Little CMS through the imaging library',
      ms.own / (ms.lcms - ms.noConversion),
    ),
    row('conversion by a table / decode', ms.own / decodeMs),
  ];
}
