import { writePng } from '../../fixtures/byte-writers/write-png.ts';

/** An opaque square in one colour. 24 x 24 px by default: printed 2 mm wide that are about 300 ppi. */
export function makeArt(colour: readonly [number, number, number] = [40, 120, 60], sidePx = 24): Uint8Array {
  const samples = Array.from({ length: sidePx * sidePx }, () => [...colour, 255]).flat();
  return writePng({ widthPx: sidePx, heightPx: sidePx, colourType: 6, bitDepth: 8, samples });
}
