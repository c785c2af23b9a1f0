import { blankFromSize, findBlank, preflight } from '../../dist/src/index.js';
import { row, timeInTurn } from './measure.mjs';

/** A whole wrap of the 30 oz tapered tumbler, its paper bent, beside the same art at the same size on a flat blank. */
export async function wrapRow(path, bytes, rounds) {
  const round = findBlank('tumbler-30oz-tapered');
  // Once round at mid height, and the strip of its paper: see the development in the report.
  const { report } = await preflight({ path, bytes }, { blank: round, wrap: { kind: 'around' } });
  const { placementMm, blank } = report;
  const flat = blankFromSize(`${blank.widthMm.toFixed(2)}x${blank.heightMm.toFixed(2)}mm`);
  const ms = await timeInTurn(
    {
      wrap: () => preflight({ path, bytes }, { blank: round, wrap: { kind: 'around' } }, { write: true }),
      flat: () =>
        preflight({ path, bytes }, { blank: flat, bleedMm: 0, widthMm: placementMm.width }, { write: true }),
    },
    rounds,
  );
  console.log('wrap', Math.round(ms.wrap), 'ms, flat', Math.round(ms.flat), 'ms, median');
  return row('photo: 30 oz tapered wrap / the same flat', ms.wrap / ms.flat, 2);
}
