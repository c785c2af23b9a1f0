import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { judgeChecks, pictureArtwork } from '../../src/check-artwork.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import type { RectPx } from '../../src/geometry/rectangle.ts';
import { readArtwork } from '../../src/read-artwork.ts';
import { blankOf } from '../checks/jobs.ts';
import { seededNumbers } from '../pictures.ts';
import { makeSheets, type Places } from './contact-sheets.ts';
import { countReal, RATED, type Seen } from './count-real.ts';
import { judgeCovering, OF_COVERING } from './judge-covering.ts';
import { readJudgements } from './judgements.ts';
import { PLANTS } from './plants.ts';
import { PLANTS_OF_DETAIL } from './plants-of-detail.ts';
import { listRealPictures, type RealPicture } from './real-pictures.ts';
import { renderReal } from './render-rates.ts';

// RATES=1 looks at all pictures and writes the table (minutes); else a few are looked at, for whether it works at all.
// SHEETS=<folder> lays the alarms, and as many silences, on contact sheets, to be judged by eye.
const whole = process.env.RATES === '1';
const SAMPLE = 8;
/** Every so many pictures gets a fault of each list, in turn. */
const PLANT_EVERY = 4;
const LISTS = new Map([
  [1, { plants: PLANTS, seedOf: (index: number) => index }],
  // The first number of chance hardly differs from one seed to the next.
  [3, { plants: PLANTS_OF_DETAIL, seedOf: (index: number) => Math.imul(index, 7919) }],
]);
const request = { blank: blankOf('tile-ceramic-4.25in') };
const path = join(dirname(fileURLToPath(import.meta.url)), 'real.md');

async function look(
  { name, path: file }: RealPicture,
  index: number,
): Promise<Seen & { artwork: Artwork; places: Places }> {
  let artwork = await readArtwork(readFileSync(file));
  let planted: Seen['planted'] = null;
  const list = LISTS.get(index % PLANT_EVERY);
  if (list !== undefined) {
    const plant = list.plants[Math.floor(index / PLANT_EVERY) % list.plants.length]!;
    const raster = await plant.plant(artwork.raster, seededNumbers(list.seedOf(index)));
    if (raster !== null) {
      artwork = { ...artwork, raster };
      planted = plant;
    }
  }
  const pictured = await pictureArtwork(artwork, request);
  const inside = RATED.filter(({ id }) => !OF_COVERING.includes(id));
  const outcomes = [
    ...(await judgeChecks(artwork, pictured, request, inside)),
    ...(await judgeCovering(artwork, request, RATED)),
  ];
  const broken = outcomes.find(({ status }) => status === 'broken');
  if (broken) throw new Error(`${name}: ${JSON.stringify(broken)}`);
  const places: Record<string, RectPx> = {};
  for (const outcome of outcomes)
    if (outcome.status === 'found')
      for (const { code, place } of outcome.findings)
        if (place?.px) places[`${outcome.check}/${code}`] = place.px;
  const findings = outcomes.flatMap((outcome) =>
    outcome.status === 'found'
      ? outcome.findings.map(({ code, severity }) => ({ code: `${outcome.check}/${code}`, severity }))
      : [],
  );
  const found = findings.map(({ code }) => code);
  const loud = findings.filter(({ severity }) => severity !== 'advice').map(({ code }) => code);
  const unasked = OF_COVERING.filter((id) => !outcomes.some(({ check }) => check === id));
  return { name, planted, found, loud, unasked, artwork, places };
}

describe('rates on real pictures', () => {
  const { pictures, packages } = listRealPictures();
  it('runs over real art, and writes the table where it ran over all', {
    timeout: 3_600_000,
  }, async (context) => {
    if (pictures.length === 0) context.skip('none of the packages of real art is installed');
    const sheets = process.env.SHEETS ? makeSheets(process.env.SHEETS) : null;
    const every = whole ? 1 : Math.ceil(pictures.length / SAMPLE);
    const seen: Seen[] = [];
    for (const [index, picture] of pictures.entries()) {
      if (index % every !== 0) continue;
      const { artwork, places, ...one } = await look(picture, index);
      seen.push(one);
      await sheets?.add(one, artwork.raster, places);
    }
    await sheets?.finish();
    const run = countReal(seen, readJudgements(), packages);
    expect(run.pictures).toBeGreaterThanOrEqual(whole ? 500 : 1);
    if (!whole) return;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, renderReal(run));
  });

  it('every judgement is of a picture of the list', (context) => {
    if (pictures.length === 0) context.skip('none of the packages of real art is installed');
    const names = new Set(pictures.map(({ name }) => name));
    expect(readJudgements().filter(({ picture }) => !names.has(picture))).toEqual([]);
  });
});
