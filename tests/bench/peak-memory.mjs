// Prints how many bytes the process needed at its peak above its idle state with the library loaded.
// Arguments: the picture, and `colours` for a job with all that is done to colours, or `sheet`; or `wrap` for the way round
// a tapered tumbler; or `flat`, the size of a flat blank and the width of the art on it in mm.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { blankFromSize, findBlank, parsePaper, preflight, readPrinterProfile } from '../../dist/src/index.js';
import { peakBytes } from './peak-bytes.mjs';

await import('sharp');
const idle = peakBytes();
const [path, way, blankSize, artWidthMm] = process.argv.slice(2);
const profile = fileURLToPath(new URL('../../seeds/conditions/coated-reference.icc', import.meta.url));
const { request, options } =
  way === 'colours'
    ? {
        request: {
          mends: ['into-gamut'],
          conversion: readPrinterProfile(readFileSync(profile), 'printer.icc'),
        },
        options: { format: 'tiff', proof: { mark: true } },
      }
    : way === 'sheet'
      ? { request: { sheet: parsePaper('a4') }, options: { format: 'pdf' } }
      : way === 'wrap'
        ? {
            request: {
              blank: findBlank('tumbler-30oz-tapered'),
              wrap: { kind: 'around' },
              widthMm: undefined,
            },
          }
        : way === 'flat'
          ? { request: { blank: blankFromSize(blankSize), bleedMm: 0, widthMm: Number(artWidthMm) } }
          : {};
// In a function that does not wait, so that the bytes can go once they are decoded.
const start = () =>
  preflight(
    { path, bytes: readFileSync(path) },
    { blank: findBlank('tile-ceramic-8in'), widthMm: 178, ...request },
    { write: true, ...options },
  );
const { printReady } = await start();
if (!printReady) throw new Error('nothing was prepared');
process.stdout.write(`${peakBytes() - idle}`);
