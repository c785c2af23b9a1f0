/**
 * Runs the built library over a folder of real PNGs and asks a second implementation about every content box:
 * ImageMagick's trim of the alpha plane. Then counts what is wrong with the art, by the checks, on one blank.
 *
 *   BLANKCHECK_REAL_ART=/usr/share/openclipart/png node tests/real-art/survey-real-art.mjs
 *
 * BLANKCHECK_REAL_ART        folder, searched through; Debian's openclipart-png and tuxpaint-stamps-default have one
 * BLANKCHECK_REAL_ART_COUNT  at most so many files, taken evenly over the sorted list; all by default
 * BLANKCHECK_REAL_ART_BLANK  blank the art is checked for; tile-ceramic-4.25in by default
 *
 * Prints one JSON document. Exit code 1 when a box differs or the program failed on a file.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { BlankcheckError, checkArtwork, findBlank, readArtwork, surveyRaster } from '../../dist/src/index.js';

/** @typedef {{ x: number, y: number, width: number, height: number }} RectPx */

const folder = process.env.BLANKCHECK_REAL_ART ?? '';
const blankId = process.env.BLANKCHECK_REAL_ART_BLANK ?? 'tile-ceramic-4.25in';
const atMost = Number(process.env.BLANKCHECK_REAL_ART_COUNT ?? Number.POSITIVE_INFINITY);

/** Every PNG below a folder, sorted; every n-th where there are too many. @param {string} root */
function listArt(root) {
  const all = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.toLowerCase().endsWith('.png'))
    .sort()
    .map((path) => join(root, path));
  const every = Math.max(1, Math.ceil(all.length / atMost));
  return all.filter((_, i) => i % every === 0);
}

/**
 * The box by ImageMagick: null when nothing is visible, undefined when it cannot say (its own limits). A border of
 * clear pixels is put round the alpha plane first: trim takes the corner's value as background, so opaque corners
 * would make it trim the wrong thing.
 * @param {string} path
 * @returns {RectPx | null | undefined}
 */
function boxByImageMagick(path) {
  const args = [path, '-alpha', 'extract', '-bordercolor', 'black', '-border', '1', '-format', '%@', 'info:'];
  let answer;
  try {
    answer = execFileSync('convert', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  } catch {
    return undefined;
  }
  const [width, height, x, y] = /** @type {[number, number, number, number]} */ (
    (answer.match(/-?\d+/g) ?? []).map(Number)
  );
  return width === 0 || height === 0 || x < 0 ? null : { x: x - 1, y: y - 1, width, height };
}

/** @param {Record<string, number>} counts @param {string} name */
const count = (counts, name) => {
  counts[name] = (counts[name] ?? 0) + 1;
};

/** What a box and its alpha tell about an artwork. @param {import('../../src/raster/survey.ts').Survey} survey */
function* traitsOf(survey) {
  const box = survey.contentBoxPx;
  if (box === null) return yield 'nothing visible';
  const { widthPx, heightPx, borderPixels, boxAtAlphaPx, alphaHistogram } = survey;
  if (box.width < widthPx || box.height < heightPx) yield 'transparent margin';
  if (Math.min(box.width / widthPx, box.height / heightPx) < 0.9)
    yield 'margin of a tenth or more on an axis';
  if (Object.values(borderPixels).some((pixels) => pixels > 0)) yield 'touches a border of its canvas';
  if (survey.visiblePixels === widthPx * heightPx) yield 'no clear pixel at all';
  const solid = boxAtAlphaPx.percent50;
  if (solid === null) yield 'nothing as solid as 50 %';
  else if (solid.width < box.width * 0.98 || solid.height < box.height * 0.98)
    yield 'box at 50 % smaller by 2 % or more';
  if (boxAtAlphaPx.percent2?.width !== box.width || boxAtAlphaPx.percent2?.height !== box.height)
    yield 'box set by pixels fainter than 2 %';
  const faint = alphaHistogram.subarray(1, 13).reduce((sum, pixels) => sum + pixels, 0);
  if (faint > survey.visiblePixels * 0.01) yield 'alpha 1 to 12 on over 1 % of the visible pixels';
}

async function surveyFolder() {
  const blank = findBlank(blankId);
  if (blank === undefined) throw new Error(`Expected a blank of the catalogue, received ${blankId}`);
  const files = listArt(folder);
  /** @type {Record<string, number>} */
  const [traits, findings] = [{}, {}];
  /** @type {{ path: string, code: string }[]} */
  const refused = [];
  /** @type {string[]} */
  const unwitnessed = [];
  /** @type {{ path: string, ours: RectPx | null, imageMagick: RectPx | null }[]} */
  const differing = [];
  /** @type {{ path: string, error: string }[]} */
  const broken = [];
  let same = 0;
  for (const path of files) {
    try {
      const artwork = await readArtwork(readFileSync(path));
      const { extents, outcomes } = await checkArtwork(artwork, { blank });
      const survey = surveyRaster(artwork.raster, extents);
      const [ours, imageMagick] = [survey.contentBoxPx, boxByImageMagick(path)];
      if (imageMagick === undefined) unwitnessed.push(path);
      else if (JSON.stringify(ours) === JSON.stringify(imageMagick)) same += 1;
      else differing.push({ path, ours, imageMagick });
      for (const trait of traitsOf(survey)) count(traits, trait);
      for (const outcome of outcomes) {
        if (outcome.status === 'broken') broken.push({ path, error: `${outcome.check}: ${outcome.error}` });
        if (outcome.status !== 'found') continue;
        for (const code of new Set(outcome.findings.map((finding) => finding.code)))
          count(findings, `${outcome.check}/${code}`);
      }
    } catch (error) {
      if (error instanceof BlankcheckError) refused.push({ path, code: error.code });
      else broken.push({ path, error: String(error) });
    }
  }
  return {
    folder,
    blank: blankId,
    files: files.length,
    sameBox: same,
    differing,
    refused,
    unwitnessed,
    broken,
    traits,
    findings,
  };
}

const result = await surveyFolder();
console.log(JSON.stringify(result, null, 2));
if (result.differing.length > 0 || result.broken.length > 0) process.exitCode = 1;
