// node tests/bench/colours.mjs: the rows of colours alone, for whoever works on them.
import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { colourRows } from './colour-rows.mjs';
import { timeInTurn } from './measure.mjs';
import { benchPictures } from './pictures.mjs';

const ROUNDS = 5;
const { photo: path } = await benchPictures();
const bytes = readFileSync(path);
const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
const { decode } = await timeInTurn({ decode: () => sharp(bytes).raw().toBuffer() }, ROUNDS);
console.table(await colourRows({ path, data, info }, decode, ROUNDS));
