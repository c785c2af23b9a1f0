import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { bareRow } from './bare-row.mjs';
import { row } from './measure.mjs';
import { benchPictures } from './pictures.mjs';

const plain = fileURLToPath(new URL('plain-folder.mjs', import.meta.url));
/** 100 mm at 300 ppi, as wide as the words of these runs say, on the paper of the tile, 206 mm with its bleed. */
const SIZE = { widthPx: 1181, paperPx: 2433 };
/** So many that the start of the processes does not count. */
const LARGE = 24;
const bin = fileURLToPath(new URL('../../dist/cli/bin.js', import.meta.url));
const folder = join(tmpdir(), 'blankcheck-bench', 'folder');

/** Rates of runs over folders, once each: they are long, and what is compared has the same work. */
export async function folderRows(files = 200) {
  rmSync(folder, { recursive: true, force: true });
  await makeMixed(join(folder, 'art'), files);
  const words = (out, from, ...more) =>
    [
      bin,
      from,
      '--blank',
      'tile-ceramic-8in',
      '--width',
      '100mm',
      '--out',
      out,
      '--quiet',
      '--anyway',
    ].concat(['--fail-on', 'never', ...more]);
  const single = await timeRun(words('one', 'art', '--jobs', '1'));
  const pool = await timeRun(words('two', 'art', '--jobs', '2'));
  const again = await timeRun(words('two', 'art', '--jobs', '2'));
  const plainly = async (from) => {
    mkdirSync(join(folder, `${from}-plain`));
    return timeRun([plain, from, `${from}-plain`, '2', `${SIZE.widthPx}`, `${SIZE.paperPx}`]);
  };
  const mixed = { plain: await plainly('art'), command: pool };
  await makeLarge(join(folder, 'large'), LARGE);
  const large = {
    command: await timeRun(words('three', 'large', '--jobs', '2')),
    plain: await plainly('large'),
  };
  await makeMixed(join(folder, 'few'), 8);
  await makeLarge(join(folder, 'few-large'), 2);
  const bare = [
    await bareRow('8 mixed files', join(folder, 'few'), SIZE, 3),
    await bareRow('2 pictures of 24 megapixels', join(folder, 'few-large'), SIZE, 3),
  ];
  await makeMany(join(folder, 'many'), 10_000);
  const start = await firstWord([bin, 'check', 'many', '--blank', '60x60mm']);
  rmSync(folder, { recursive: true, force: true });
  return [
    row(`${files} mixed files: one process / two`, single / pool, 1.5, 'at least'),
    row(
      `${files} mixed files: plain scripts in two processes / two`,
      mixed.plain / mixed.command,
      1.5,
      'at least',
    ),
    row(`${LARGE} pictures of 24 megapixels: the same`, large.plain / large.command, 4, 'at least'),
    ...bare,
    row(`${files} mixed files: second run / first`, again / pool, 0.05),
    row('10,000 files: seconds to the first progress', start / 1000, 1),
  ];
}

/** Pictures of four sizes and three kinds. */
export async function makeMixed(into, files) {
  await mkdir(into, { recursive: true });
  for (let index = 0; index < files; index += 1) {
    const width = [500, 900, 1600, 2600][index % 4];
    const height = Math.round(width * 0.7);
    const data = Buffer.alloc(width * height * 4);
    for (let at = 0; at < data.length; at += 4) {
      const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
      data.set([(x * 255) / width, (y * 255) / height, (x ^ y ^ index) & 127, x > 20 ? 255 : 0], at);
    }
    const art = sharp(data, { raw: { width, height, channels: 4 } });
    const kind = ['png', 'jpeg', 'png', 'webp'][index % 4];
    await art.toFormat(kind).toFile(join(into, `${index}.${kind}`));
  }
}

/** Transparent pictures, photo-like and flat in turn. */
async function makeLarge(into, files) {
  mkdirSync(into);
  const pictures = Object.values(await benchPictures());
  for (let index = 0; index < files; index += 1)
    copyFileSync(pictures[index % pictures.length], join(into, `${index}.png`));
}

async function makeMany(into, files) {
  await mkdir(into, { recursive: true });
  const art = await sharp({ create: { width: 24, height: 24, channels: 4, background: '#3a7d2c' } })
    .png()
    .toBuffer();
  for (let index = 0; index < files; index += 1) await writeFile(join(into, `${index}.png`), art);
}

/** Milliseconds of a run in a folder; fails where it does. */
export function timeRun(args, cwd = folder) {
  const began = performance.now();
  return new Promise((resolve, reject) => {
    spawn(process.execPath, args, { cwd, stdio: 'ignore' })
      .on('error', reject)
      .on('close', (code) =>
        code === 0 ? resolve(performance.now() - began) : reject(new Error(`the run ended with ${code}`)),
      );
  });
}

/** Milliseconds until something is told on a terminal, which `script` (util-linux) is; the run is ended then. */
function firstWord(args) {
  const began = performance.now();
  return new Promise((resolve, reject) => {
    const quoted = [process.execPath, ...args].map((word) => `'${word}'`).join(' ');
    const child = spawn('script', ['-qec', quoted, '/dev/null'], {
      cwd: folder,
      env: { ...process.env, CI: '', TERM: 'xterm' },
    });
    child.on('error', reject);
    child.stdout.once('data', () => {
      resolve(performance.now() - began);
      child.kill('SIGKILL');
    });
  });
}
