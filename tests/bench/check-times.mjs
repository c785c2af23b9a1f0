// What groups of checks take alone: each has an allowance of its own.
import { CHECKS, checkArtwork, readForPrint } from '../../dist/src/index.js';
import { median } from './measure.mjs';

export const COLOURS = ['gamut', 'dark-coverage'];
export const CUT_OUTS = [
  'stray-pixels',
  'alpha-haze',
  'near-white-box',
  'hollow-alpha',
  'edge-fringe',
  'cut-off-edge',
  'marked-preview',
];
export const DETAIL = [
  'true-detail',
  'thin-detail',
  'thin-border',
  'edge-detail',
  'compression-blocks',
  'banding',
];

/**
 * Milliseconds of some checks on an artwork, by what their `run` takes; the tables of the condition stand. The artwork is
 * read anew for each round, since what is measured once for a picture is kept with it.
 */
export async function timeChecks(bytes, request, ids, rounds) {
  const times = [];
  for (let round = 0; round <= rounds; round += 1) {
    const artwork = await readForPrint(bytes, request);
    let spent = 0;
    const undo = CHECKS.filter(({ id }) => ids.includes(id)).map((check) => {
      const { run } = check;
      check.run = (inputs) => {
        const start = performance.now();
        const result = run(inputs);
        spent += performance.now() - start;
        return result;
      };
      return () => {
        check.run = run;
      };
    });
    await checkArtwork(artwork, request);
    for (const restore of undo) restore();
    if (round > 0) times.push(spent);
  }
  return median(times);
}
