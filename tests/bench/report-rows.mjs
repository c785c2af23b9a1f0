import { readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';
import { makeMixed, timeRun } from './folder-rows.mjs';
import { median, row } from './measure.mjs';

const bin = fileURLToPath(new URL('../../dist/cli/bin.js', import.meta.url));
const folder = join(tmpdir(), 'blankcheck-bench', 'report');
const CHROMIUM = '/usr/bin/chromium';

/** What the picture report costs on top of a run, how large its page is, and how soon its pictures are seen. */
export async function reportRows(files = 200, rounds = 3) {
  rmSync(folder, { recursive: true, force: true });
  await makeMixed(join(folder, 'art'), files);
  const words = (out, ...more) =>
    [bin, 'art', '--blank', 'tile-ceramic-8in', '--width', '100mm', '--out', out, '--quiet'].concat([
      '--fresh',
      '--force',
      '--fail-on',
      'never',
      '--anyway',
      ...more,
    ]);
  // In turn, so that a slow moment of the machine hits both alike.
  const ratios = [];
  for (let round = 0; round < rounds; round += 1) {
    const plain = await timeRun(words('plain'), folder);
    ratios.push((await timeRun(words('told', '--report', 'report.html'), folder)) / plain);
  }
  const page = join(folder, 'report.html');
  const megabytes = statSync(page).size / 1e6;
  const pictures = readFileSync(page, 'utf8').match(/<image /g)?.length ?? 0;
  if (pictures < files)
    throw new Error(`Expected a picture of each of ${files} artworks, found ${pictures}.`);
  const seconds = await timeShown(page);
  rmSync(folder, { recursive: true, force: true });
  return [
    row(`${files} artworks: run with the report / without`, median(ratios), 1.15),
    row(`${files} artworks: megabytes of the page`, megabytes, 30),
    row(`${files} artworks: seconds in Chromium until all of the first screen is painted`, seconds, 2),
  ];
}

/** From the address to the second frame after everything was loaded: the first picture was shown by then. */
async function timeShown(page) {
  const browser = await puppeteer.launch({
    executablePath: CHROMIUM,
    headless: true,
    args: ['--no-sandbox'],
  });
  try {
    const tab = await browser.newPage();
    await tab.setViewport({ width: 1400, height: 1000 });
    const began = performance.now();
    await tab.goto(pathToFileURL(page).href);
    await tab.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    return (performance.now() - began) / 1000;
  } finally {
    await browser.close();
  }
}
