// npm run bench: ratios in one run against what the imaging library alone needs. Never a timed test: machines are noisy.
import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { findBlank, parsePaper, preflight } from '../../dist/src/index.js';
import { bigRows } from './big-rows.mjs';
import { COLOURS, CUT_OUTS, DETAIL, timeChecks } from './check-times.mjs';
import { colourRows } from './colour-rows.mjs';
import { loadCommand } from './command.mjs';
import { folderRows } from './folder-rows.mjs';
import { historyRows } from './history-rows.mjs';
import { median, row, runNode, timeInTurn } from './measure.mjs';
import { benchPictures } from './pictures.mjs';
import { reportRows } from './report-rows.mjs';
import { sheetRows } from './sheet-rows.mjs';
import { wrapRows } from './wrap-row.mjs';

const ROUNDS = 7;
const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const out = join(tmpdir(), 'blankcheck-bench', 'out');
const request = { blank: findBlank('tile-ceramic-8in'), widthMm: 178 };
const rows = [];
const command = await loadCommand();
let decodeOfPhoto;

/** P: one plain pass over the picture that fills an alpha and a colour histogram. */
function plainPass(data) {
  const alpha = new Uint32Array(256);
  const colours = new Uint32Array(32768);
  for (let i = 0; i < data.length; i += 4) {
    alpha[data[i + 3]] += 1;
    colours[((data[i] >> 3) << 10) | ((data[i + 1] >> 3) << 5) | (data[i + 2] >> 3)] += 1;
  }
  return alpha[0] + colours[0];
}

for (const [name, path] of Object.entries(await benchPictures())) {
  const bytes = readFileSync(path);
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
  const { printReady } = await preflight({ path, bytes }, request, { write: true });
  const canvas = await sharp(printReady.bytes).raw().toBuffer({ resolveWithObject: true });
  const content = { left: 401, top: 301, width: 5199, height: 3399 };

  const sheetRequest = { ...request, sheet: parsePaper('a4') };

  const ms = await timeInTurn(
    {
      decode: () => sharp(bytes).raw().toBuffer(),
      resize: () =>
        sharp(data, { raw: info }).extract(content).resize(2102, 1374, { fit: 'fill' }).raw().toBuffer(),
      encode: () => sharp(canvas.data, { raw: canvas.info }).png().toBuffer(),
      pass: () => plainPass(data),
      prepare: () => preflight({ path, bytes }, request, { write: true }),
      sheet: () => preflight({ path, bytes }, sheetRequest, { write: true, format: 'png' }),
      pdf: () => preflight({ path, bytes }, sheetRequest, { write: true, format: 'pdf' }),
      check: () => preflight({ path, bytes }, request, { write: false }),
    },
    ROUNDS,
  );
  console.log(
    name,
    Object.fromEntries(Object.entries(ms).map(([task, value]) => [task, Math.round(value)])),
    'ms, median',
  );
  rows.push(
    row(
      `${name}: prepare / (decode + resize + encode + 4 P)`,
      ms.prepare / (ms.decode + ms.resize + ms.encode + 4 * ms.pass),
      1,
    ),
  );
  // The checks of colours have an allowance of their own: one decode of the photo-like picture, which comes first.
  decodeOfPhoto ??= ms.decode;
  const coloursMs = await timeChecks(bytes, request, COLOURS, ROUNDS);
  const detailMs = await timeChecks(bytes, request, DETAIL, ROUNDS);
  const cutOutsMs = await timeChecks(bytes, request, CUT_OUTS, ROUNDS);
  if (name === 'photo') rows.push(...(await wrapRows({ path, bytes, decodedBytes: data.length }, ROUNDS)));
  if (name === 'photo') rows.push(...(await colourRows({ path, data, info }, ms.decode, ROUNDS)));
  rows.push(row(`${name}: A4 sheet as PNG / the piece alone`, ms.sheet / ms.prepare, 1.5));
  rows.push(row(`${name}: A4 sheet as PDF / the piece alone as PNG`, ms.pdf / ms.prepare, 1.5));
  rows.push(row(`${name}: colour checks / decode of photo`, coloursMs / decodeOfPhoto, 1));
  // So have those of cut-outs: twice as much.
  rows.push(row(`${name}: cut-out checks / decode of photo`, cutOutsMs / decodeOfPhoto, 2));
  rows.push(row(`${name}: checks of detail / decode of photo`, detailMs / decodeOfPhoto, 2));
  rows.push(
    row(
      `${name}: check without those / (decode + 3 P)`,
      (ms.check - coloursMs - cutOutsMs - detailMs) / (ms.decode + 3 * ms.pass),
      1,
    ),
  );

  const words = [
    path,
    '--blank',
    'tile-ceramic-8in',
    '--width',
    '178mm',
    '--out',
    out,
    '--force',
    '--fail-on',
    'never',
  ];
  const plain = (options) => () =>
    sharp(path).trim(options).resize(2102).flop().png().toFile(`${out}-plain.png`);
  const inProcess = await timeInTurn(
    { command: () => command(words), plain: plain({}), exact: plain({ lineArt: true }) },
    ROUNDS,
  );
  rows.push(
    row(
      `${name}: plain script / command`,
      inProcess.plain / inProcess.command,
      name === 'photo' ? 5 : 4,
      'at least',
    ),
  );
  rows.push(row(`${name}: exact-trim script / command`, inProcess.exact / inProcess.command, 1, 'at least'));

  const script = (way) => [here('plain-script.mjs'), path, `${out}-plain.png`, way];
  const whole = await timeInTurn(
    {
      command: () => runNode([here('../../dist/cli/bin.js'), ...words]),
      plain: () => runNode(script('trim')),
      exact: () => runNode(script('exact')),
    },
    ROUNDS,
  );
  rows.push(
    row(`${name}: the same as processes of their own, from a cold start`, whole.plain / whole.command),
  );
  rows.push(row(`${name}: exact-trim script as well`, whole.exact / whole.command));

  const peaks = Array.from({ length: 5 }, () => Number(runNode([here('peak-memory.mjs'), path])));
  rows.push(row(`${name}: peak memory above idle / decoded picture`, median(peaks) / data.length, 2.2));
  const onSheet = Array.from({ length: 3 }, () => Number(runNode([here('peak-memory.mjs'), path, 'sheet'])));
  rows.push(row(`${name}: the same of an A4 sheet as PDF`, median(onSheet) / data.length, 2.2));
}
rows.push(...(await bigRows()));
rows.push(...(await folderRows()));
rows.push(...(await sheetRows(ROUNDS)));
rows.push(...(await reportRows()));
rows.push(...(await historyRows(ROUNDS)));
console.table(rows);
