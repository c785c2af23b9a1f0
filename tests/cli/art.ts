import { writePng } from '../../fixtures/byte-writers/write-png.ts';

/** A small opaque square in one colour: 24 x 24 px, so that 2 mm are about 300 ppi. */
export function makeArt(colour: readonly [number, number, number] = [40, 120, 60]): Uint8Array {
  const side = 24;
  const samples = Array.from({ length: side * side }, () => [...colour, 255]).flat();
  return writePng({ widthPx: side, heightPx: side, colourType: 6, bitDepth: 8, samples });
}
