import type { RoundBand } from '../geometry/development.ts';
import type { WrapRecord } from './records.ts';

/**
 * The printed band of a body whose diameters are given at its rim and foot: with k = (Dtop - Dbottom) / body height, its
 * upper diameter is Dtop - k · clear top, its lower Dtop - k · (clear top + print height).
 */
export function bandOfBody(wrap: Omit<WrapRecord, 'wayRound'>): RoundBand {
  const { topDiameterMm, bottomDiameterMm, bodyHeightMm, printHeightMm, clearTopMm } = wrap;
  const perMm = (topDiameterMm - bottomDiameterMm) / bodyHeightMm;
  return {
    topDiameterMm: topDiameterMm - perMm * clearTopMm,
    bottomDiameterMm: topDiameterMm - perMm * (clearTopMm + printHeightMm),
    heightMm: printHeightMm,
  };
}
