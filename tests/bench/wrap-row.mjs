import { fileURLToPath } from 'node:url';
import { blankFromSize, findBlank, preflight } from '../../dist/src/index.js';
import { median, row, runNode, timeInTurn } from './measure.mjs';

/** A whole wrap of the 30 oz tapered tumbler, its paper bent, beside the same art at the same size on a flat blank. */
export async function wrapRows({ path, bytes, decodedBytes }, rounds) {
  const round = findBlank('tumbler-30oz-tapered');
  // Once round at mid height, and the strip of its paper: see the development in the report.
  const { report } = await preflight({ path, bytes }, { blank: round, wrap: { kind: 'around' } });
  const { placementMm, blank } = report;
  const size = `${blank.widthMm.toFixed(2)}x${blank.heightMm.toFixed(2)}mm`;
  const flat = blankFromSize(size);
  const ms = await timeInTurn(
    {
      wrap: () => preflight({ path, bytes }, { blank: round, wrap: { kind: 'around' } }, { write: true }),
      flat: () =>
        preflight({ path, bytes }, { blank: flat, bleedMm: 0, widthMm: placementMm.width }, { write: true }),
    },
    rounds,
  );
  console.log('wrap', Math.round(ms.wrap), 'ms, flat', Math.round(ms.flat), 'ms, median');
  const here = fileURLToPath(new URL('peak-memory.mjs', import.meta.url));
  const peakOf = (...way) => median(Array.from({ length: 3 }, () => Number(runNode([here, path, ...way]))));
  const peaks = { wrap: peakOf('wrap'), flat: peakOf('flat', size, `${placementMm.width}`) };
  console.log(
    'peak of wrap',
    Math.round(peaks.wrap / 1e6),
    'MB, of flat',
    Math.round(peaks.flat / 1e6),
    'MB',
  );
  return [
    row('photo: 30 oz tapered wrap / the same flat', ms.wrap / ms.flat, 2),
    row('photo: peak memory of that wrap above idle / decoded picture', peaks.wrap / decodedBytes),
    row('photo: the same / that of the flat job', peaks.wrap / peaks.flat, 1.25),
  ];
}
