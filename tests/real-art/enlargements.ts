import sharp from 'sharp';
import { runChecks } from '../../src/checks/run.ts';
import trueDetail from '../../src/checks/true-detail.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { subjectOf } from '../checks/jobs.ts';
import { makeByWitness } from '../witness.ts';

const BY_SHARP = ['linear', 'cubic', 'mitchell', 'nearest'] as const;
const BY_IMAGEMAGICK = ['Triangle', 'Catrom', 'Mitchell', 'Lanczos', 'Point'] as const;

export interface Enlarged {
  /** By how much, along each direction: 1 where it is the picture as it was. */
  readonly x: number;
  readonly y: number;
  readonly by: string;
  readonly raster: Raster;
}

/** What a PNG is after it was reduced by a factor and enlarged to where it was, by each kernel of both programs; by 1 as it is. */
export async function* enlargements(picture: Buffer, factor: number): AsyncGenerator<Enlarged> {
  if (factor === 1) {
    yield { x: 1, y: 1, by: 'nothing', raster: await decode(picture) };
    return;
  }
  const { width, height } = await sharp(picture).metadata();
  const [toWidth, toHeight] = [Math.round(width / factor), Math.round(height / factor)];
  const [x, y] = [width / toWidth, height / toHeight];
  const small = await sharp(picture).resize(toWidth, toHeight, { fit: 'fill' }).png().toBuffer();
  for (const kernel of BY_SHARP) {
    const large = await sharp(small).resize(width, height, { kernel, fit: 'fill' }).png().toBuffer();
    yield { x, y, by: kernel, raster: await decode(large) };
  }
  for (const filter of BY_IMAGEMAGICK) {
    const args = [
      'small.png',
      '-filter',
      filter,
      '-resize',
      `${width}x${height}!`,
      '-depth',
      '8',
      'large.png',
    ];
    const large = makeByWitness('convert', args, { 'small.png': small }, 'large.png');
    yield { x, y, by: filter, raster: await decode(large) };
  }
}

async function decode(bytes: Uint8Array): Promise<Raster> {
  const { data, info } = await sharp(bytes).toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
  const hasAlpha = info.channels === 4;
  const shape = { widthPx: info.width, heightPx: info.height, model: 'rgb', hasAlpha, depth: 8 } as const;
  return { ...createRaster(shape), data };
}

/** How often estimates were what they should be, to 20 %, and how often not. */
export interface Counts {
  right: number;
  unknown: number;
  /** Less enlarged than it is: what is coarse passes for fine. */
  finer: number;
  coarser: number;
}

export const noCounts = (): Counts => ({ right: 0, unknown: 0, finer: 0, coarser: 0 });

export function count(counts: Counts, estimate: number | null, truth: number): keyof Counts {
  const share = estimate === null ? null : estimate / truth;
  const answer = share === null ? 'unknown' : share > 1.2 ? 'coarser' : share < 1 / 1.2 ? 'finer' : 'right';
  counts[answer] += 1;
  return answer;
}

/** What the check tells of a picture, by both directions: by how much it was enlarged; null where it tells nothing. */
export function toldOf(raster: Raster): number | null {
  const [outcome] = runChecks(subjectOf(raster, { widthMm: 60 }), [trueDetail]);
  const facts =
    outcome!.status === 'found' ? outcome!.findings[0]!.facts : 'facts' in outcome! ? outcome.facts : null;
  return facts ? Number(facts.enlargedBy) : null;
}
