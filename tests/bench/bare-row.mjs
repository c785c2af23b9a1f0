import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { findBlank, pictureArtwork, prepareArtwork, readForPrint } from '../../dist/src/index.js';
import { row, timeInTurn } from './measure.mjs';
import { preparePlainly } from './plain-picture.mjs';

/**
 * How the plain script compares with reading, placing, sizing and writing alone, one thread each: what would be left if
 * all checks cost nothing. What a run over a folder asks beyond that no check could give.
 */
export async function bareRow(name, folder, size, rounds) {
  const before = sharp.concurrency(1);
  const request = { blank: findBlank('tile-ceramic-8in'), widthMm: (size.widthPx / 300) * 25.4 };
  const paths = readdirSync(folder).map((file) => join(folder, file));
  const output = join(folder, '..', 'bare.png');
  const bare = async (path) => {
    const artwork = await readForPrint(readFileSync(path), request);
    writeFileSync(output, await prepareArtwork(artwork, await pictureArtwork(artwork, request)));
  };
  const inTurn = (work) => async () => {
    for (const path of paths) await work(path);
  };
  const times = await timeInTurn(
    { bare: inTurn(bare), plain: inTurn((path) => preparePlainly(sharp, path, output, size)) },
    rounds,
  );
  sharp.concurrency(before);
  return row(`${name}: plain script / ours without any check`, times.plain / times.bare);
}
