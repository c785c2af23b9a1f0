// node tests/bench/checks.mjs, after a build: what groups of checks take beside one decode of the photo-like picture.
import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { findBlank } from '../../dist/src/index.js';
import { COLOURS, CUT_OUTS, DETAIL, timeChecks } from './check-times.mjs';
import { row, timeInTurn } from './measure.mjs';
import { benchPictures } from './pictures.mjs';

const ROUNDS = 3;
const request = { blank: findBlank('tile-ceramic-8in'), widthMm: 178 };
const rows = [];
let decodeOfPhoto;
for (const [name, path] of Object.entries(await benchPictures())) {
  const bytes = readFileSync(path);
  decodeOfPhoto ??= (await timeInTurn({ decode: () => sharp(bytes).raw().toBuffer() }, ROUNDS)).decode;
  for (const [group, ids, limit] of [
    ['colour checks', COLOURS, 1],
    ['cut-out checks', CUT_OUTS, 2],
    ['checks of detail', DETAIL, 2],
  ])
    rows.push(
      row(
        `${name}: ${group} / decode of photo`,
        (await timeChecks(bytes, request, ids, ROUNDS)) / decodeOfPhoto,
        limit,
      ),
    );
}
console.table(rows);
