import sharp from 'sharp';
import {
  blankFromSize,
  encodeSheet,
  encodeSheetsAsPdf,
  judgePiece,
  laySheets,
  parsePaper,
  preflight,
} from '../../dist/src/index.js';
import { row, timeInTurn } from './measure.mjs';

const A4 = parsePaper('a4');
const ROLL = parsePaper('roll:24in');
const PPI = 300;
const LAYOUT = { gutterMm: 3 };
const MARKS = [
  'centre-ticks',
  'roll-lines',
  'ruler',
  'mirror-witness',
  'label',
  'up-arrow',
  'corner-marks',
  'nozzle-bars',
  'step-wedge',
];

/** Sheets of many pieces: packing and marks alone, then 40 tags on one page beside the same 40 as files of their own. */
export async function sheetRows(rounds) {
  return [...(await packingRows(rounds)), ...(await tagRows(rounds))];
}

/** 200 pieces of as many sizes: pixels play no part, so each is the same small art. */
async function packingRows(rounds) {
  const art = await makeArt(1);
  const orders = [];
  for (let piece = 0; piece < 200; piece += 1) {
    const size = `${20 + ((piece * 7) % 41)}.${piece % 10}x${20 + ((piece * 13) % 43)}mm`;
    const request = { blank: blankFromSize(size), sheet: A4, ppi: PPI, widthMm: 5 };
    const judged = await judgePiece({ path: `tag-${piece}.png`, bytes: art }, request, { anyway: true });
    orders.push({ sides: [judged], copies: 1, pair: false, mayTurn: true });
  }
  const bare = { omitMarks: MARKS };
  const ms = await timeInTurn(
    {
      packed: () => laySheets(orders, { sheet: A4, ppi: PPI, ...bare }, LAYOUT),
      marked: () => laySheets(orders, { sheet: A4, ppi: PPI }, LAYOUT),
      rolled: () => laySheets(orders, { sheet: ROLL, ppi: PPI }, LAYOUT),
    },
    rounds,
  );
  return [
    row('200 sizes: seconds to pack them on A4', ms.packed / 1000, 1),
    row('200 sizes: seconds with all marks, a label for each', ms.marked / 1000),
    row('200 sizes: seconds to pack them on a roll', ms.rolled / 1000),
  ];
}

async function tagRows(rounds) {
  const blank = blankFromSize('22x32mm');
  const arts = await Promise.all(
    Array.from({ length: 40 }, async (_, tag) => ({ path: `tag-${tag}.png`, bytes: await makeArt(tag) })),
  );
  const request = { blank, fit: 'cover', ppi: PPI };
  const layAll = async () => {
    const orders = [];
    for (const art of arts) {
      const judged = await judgePiece(art, { ...request, sheet: A4 }, { anyway: true });
      orders.push({ sides: [judged], copies: 1, pair: false, mayTurn: true });
    }
    const { sheets } = laySheets(orders, { sheet: A4, ppi: PPI }, LAYOUT);
    if (sheets.length !== 1) throw new Error(`40 tags lie on ${sheets.length} pages`);
    return sheets;
  };
  const ms = await timeInTurn(
    {
      alone: async () => {
        for (const art of arts) await preflight(art, request, { write: true, anyway: true });
      },
      png: async () => encodeSheet((await layAll())[0]),
      pdf: async () => encodeSheetsAsPdf(await layAll()),
    },
    rounds,
  );
  return [
    row('40 tags: one A4 as PDF / the 40 alone as PNG', ms.pdf / ms.alone, 2),
    row('40 tags: one A4 as PNG / the 40 alone as PNG', ms.png / ms.alone, 2),
  ];
}

/** Smooth, with noise of its own, so that no two files are alike. */
async function makeArt(seed) {
  const [width, height] = [400, 540];
  const data = Buffer.alloc(width * height * 4);
  let noise = seed + 1;
  for (let at = 0; at < data.length; at += 4) {
    noise = (Math.imul(noise, 1664525) + 1013904223) >>> 0;
    data.set([(at >> 12) & 255, 90 + (noise >>> 28), (seed * 6) & 255, 255], at);
  }
  return sharp(data, { raw: { width, height, channels: 4 } })
    .png()
    .toBuffer();
}
